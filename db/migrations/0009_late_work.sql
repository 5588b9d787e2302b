CREATE TABLE `lateWork` (
	`change` integer PRIMARY KEY NOT NULL,
	`atMinute` integer NOT NULL,
	`taken` text NOT NULL,
	FOREIGN KEY (`change`) REFERENCES `changes`(`id`) ON UPDATE no action ON DELETE no action
);
