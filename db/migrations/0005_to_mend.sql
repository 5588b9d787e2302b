CREATE TABLE `piecesToMend` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`position` integer NOT NULL,
	`casting` text NOT NULL,
	`mould` text NOT NULL,
	`filledAt` text NOT NULL,
	`strippedAt` text NOT NULL,
	`reason` text,
	FOREIGN KEY (`casting`) REFERENCES `castings`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "not_empty_mould" CHECK(length("piecesToMend"."mould") > 0),
	CONSTRAINT "not_empty_filledAt" CHECK(length("piecesToMend"."filledAt") > 0),
	CONSTRAINT "not_empty_strippedAt" CHECK(length("piecesToMend"."strippedAt") > 0),
	CONSTRAINT "not_empty_reason" CHECK(length("piecesToMend"."reason") > 0)
);
