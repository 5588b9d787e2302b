CREATE TABLE `recordedSteps` (
	`step` text NOT NULL,
	`change` integer NOT NULL,
	PRIMARY KEY(`step`, `change`),
	FOREIGN KEY (`change`) REFERENCES `changes`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
ALTER TABLE `materials` ADD `shortBy` real DEFAULT 0 NOT NULL;--> statement-breakpoint
ALTER TABLE `moulds` ADD `emptiedAt` text;