CREATE TABLE `passkeys` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`person` integer NOT NULL,
	`name` text NOT NULL,
	`credential` text NOT NULL,
	`publicKey` text NOT NULL,
	`counter` integer NOT NULL,
	`madeAt` text NOT NULL,
	FOREIGN KEY (`person`) REFERENCES `people`(`id`) ON UPDATE no action ON DELETE cascade,
	CONSTRAINT "not_empty_name" CHECK(length("passkeys"."name") > 0),
	CONSTRAINT "not_empty_credential" CHECK(length("passkeys"."credential") > 0),
	CONSTRAINT "not_empty_publicKey" CHECK(length("passkeys"."publicKey") > 0),
	CONSTRAINT "not_empty_madeAt" CHECK(length("passkeys"."madeAt") > 0),
	CONSTRAINT "not_negative_counter" CHECK("passkeys"."counter" >= 0)
);
--> statement-breakpoint
CREATE UNIQUE INDEX `passkeys_credential_unique` ON `passkeys` (`credential`);