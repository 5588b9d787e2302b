ALTER TABLE `weatherDays` ADD `rainMm` real CONSTRAINT "not_negative_rainMm" CHECK("rainMm" >= 0);--> statement-breakpoint
ALTER TABLE `yardHabits` ADD `forecastLatitude` real;--> statement-breakpoint
ALTER TABLE `yardHabits` ADD `forecastLongitude` real;--> statement-breakpoint
ALTER TABLE `yardHabits` ADD `forecastContact` text;
