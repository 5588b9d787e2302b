CREATE TABLE `weatherDays` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`position` integer NOT NULL,
	`date` text NOT NULL,
	`minCelsius` real NOT NULL,
	`maxCelsius` real NOT NULL,
	`windKmh` real,
	`humidityPercent` real,
	CONSTRAINT "date_date" CHECK("weatherDays"."date" = date("weatherDays"."date")),
	CONSTRAINT "lowest_first" CHECK("weatherDays"."minCelsius" <= "weatherDays"."maxCelsius"),
	CONSTRAINT "humidity_percent" CHECK("weatherDays"."humidityPercent" <= 100),
	CONSTRAINT "not_negative_windKmh" CHECK("weatherDays"."windKmh" >= 0),
	CONSTRAINT "not_negative_humidityPercent" CHECK("weatherDays"."humidityPercent" >= 0)
);
--> statement-breakpoint
CREATE UNIQUE INDEX `weather_of_a_date` ON `weatherDays` (`date`);--> statement-breakpoint
ALTER TABLE `yards` ADD `coldestAt` text DEFAULT '05:00' NOT NULL;--> statement-breakpoint
ALTER TABLE `yards` ADD `warmestAt` text DEFAULT '15:00' NOT NULL;