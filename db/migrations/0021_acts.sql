CREATE TABLE `acts` (
	`key` text PRIMARY KEY NOT NULL,
	`change` integer NOT NULL,
	FOREIGN KEY (`change`) REFERENCES `changes`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "not_empty_key" CHECK(length("acts"."key") > 0)
);
