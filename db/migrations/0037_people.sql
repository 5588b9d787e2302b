CREATE TABLE `doorKeys` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`person` integer NOT NULL,
	`kind` text NOT NULL,
	`secretHash` text NOT NULL,
	`until` text NOT NULL,
	FOREIGN KEY (`person`) REFERENCES `people`(`id`) ON UPDATE no action ON DELETE cascade,
	CONSTRAINT "not_empty_secretHash" CHECK(length("doorKeys"."secretHash") > 0),
	CONSTRAINT "not_empty_until" CHECK(length("doorKeys"."until") > 0),
	CONSTRAINT "one_of_kind" CHECK("doorKeys"."kind" in ('session', 'invitation'))
);
--> statement-breakpoint
CREATE UNIQUE INDEX `doorKeys_secretHash_unique` ON `doorKeys` (`secretHash`);--> statement-breakpoint
CREATE TABLE `people` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`name` text NOT NULL,
	`role` text NOT NULL,
	`passwordHash` text,
	`madeAt` text NOT NULL,
	CONSTRAINT "not_empty_name" CHECK(length("people"."name") > 0),
	CONSTRAINT "not_empty_madeAt" CHECK(length("people"."madeAt") > 0),
	CONSTRAINT "one_of_role" CHECK("people"."role" in ('owner', 'office', 'yard'))
);
--> statement-breakpoint
CREATE UNIQUE INDEX `people_name_unique` ON `people` (`name`);