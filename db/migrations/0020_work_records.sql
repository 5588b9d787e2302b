CREATE TABLE `workRecords` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`record` text NOT NULL
);
