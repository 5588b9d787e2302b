CREATE TABLE `apiTokens` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`name` text NOT NULL,
	`scope` text NOT NULL,
	`secretHash` text NOT NULL,
	`madeAt` text NOT NULL,
	CONSTRAINT "not_empty_name" CHECK(length("apiTokens"."name") > 0),
	CONSTRAINT "not_empty_secretHash" CHECK(length("apiTokens"."secretHash") > 0),
	CONSTRAINT "not_empty_madeAt" CHECK(length("apiTokens"."madeAt") > 0),
	CONSTRAINT "one_of_scope" CHECK("apiTokens"."scope" in ('read', 'yard', 'office'))
);
--> statement-breakpoint
CREATE UNIQUE INDEX `apiTokens_secretHash_unique` ON `apiTokens` (`secretHash`);