CREATE TABLE `calendarAddresses` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`name` text NOT NULL,
	`secretHash` text NOT NULL,
	`uidEnding` text NOT NULL,
	`madeAt` text NOT NULL,
	CONSTRAINT "not_empty_name" CHECK(length("calendarAddresses"."name") > 0),
	CONSTRAINT "not_empty_secretHash" CHECK(length("calendarAddresses"."secretHash") > 0),
	CONSTRAINT "not_empty_uidEnding" CHECK(length("calendarAddresses"."uidEnding") > 0)
);
--> statement-breakpoint
CREATE UNIQUE INDEX `calendarAddresses_secretHash_unique` ON `calendarAddresses` (`secretHash`);--> statement-breakpoint
CREATE TABLE `calendarEvents` (
	`address` integer NOT NULL,
	`key` text NOT NULL,
	`event` text NOT NULL,
	PRIMARY KEY(`address`, `key`),
	FOREIGN KEY (`address`) REFERENCES `calendarAddresses`(`id`) ON UPDATE no action ON DELETE cascade
);
