ALTER TABLE `castings` ADD `sheets` text;--> statement-breakpoint
ALTER TABLE `materials` ADD `sheetWidthMm` real;--> statement-breakpoint
ALTER TABLE `materials` ADD `sheetLengthMm` real;--> statement-breakpoint
ALTER TABLE `materials` ADD `meshMm` real;--> statement-breakpoint
ALTER TABLE `materials` ADD `rests` text;