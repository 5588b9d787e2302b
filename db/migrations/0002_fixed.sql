CREATE TABLE `plannedAnew` (
	`change` integer PRIMARY KEY NOT NULL,
	`sessionStart` text NOT NULL,
	`before` text NOT NULL,
	FOREIGN KEY (`change`) REFERENCES `changes`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
ALTER TABLE `changes` ADD `dropped` text;--> statement-breakpoint
ALTER TABLE `plans` ADD `improved` integer DEFAULT false NOT NULL;--> statement-breakpoint
ALTER TABLE `plans` ADD `memory` text;--> statement-breakpoint
ALTER TABLE `plans` ADD `anew` text;--> statement-breakpoint
ALTER TABLE `yards` ADD `fixedHours` integer DEFAULT 24 NOT NULL CONSTRAINT "not_negative_fixedHours" CHECK("fixedHours" >= 0);