CREATE TABLE `stockEntries` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`at` text NOT NULL,
	`material` text NOT NULL,
	`kind` text NOT NULL,
	`quantity` real NOT NULL,
	`lengthMm` real,
	`useBy` text,
	`openedAt` text,
	`beyond` real DEFAULT 0 NOT NULL,
	`work` text,
	`reason` text,
	`by` text,
	`change` integer,
	FOREIGN KEY (`material`) REFERENCES `materials`(`id`) ON UPDATE no action ON DELETE cascade,
	CONSTRAINT "one_of_kind" CHECK("stockEntries"."kind" in ('opening', 'received', 'used', 'cut', 'counted', 'spoiled', 'returned', 'corrected')),
	CONSTRAINT "date_useBy" CHECK("stockEntries"."useBy" = date("stockEntries"."useBy")),
	CONSTRAINT "above_zero_lengthMm" CHECK("stockEntries"."lengthMm" > 0),
	CONSTRAINT "not_negative_beyond" CHECK("stockEntries"."beyond" >= 0),
	CONSTRAINT "offcuts_are_whole" CHECK("stockEntries"."lengthMm" is null or "stockEntries"."quantity" = cast("stockEntries"."quantity" as integer))
);
--> statement-breakpoint
CREATE INDEX `stockEntries_material` ON `stockEntries` (`material`,`lengthMm`,`id`);
--> statement-breakpoint
INSERT INTO `stockEntries` (`at`, `material`, `kind`, `quantity`)
SELECT strftime('%Y-%m-%dT%H:%M:%SZ', 'now'), `id`, 'opening', `onHand` FROM `materials` WHERE `onHand` > 0 ORDER BY `position`;
--> statement-breakpoint
INSERT INTO `stockEntries` (`at`, `material`, `kind`, `quantity`, `lengthMm`)
SELECT strftime('%Y-%m-%dT%H:%M:%SZ', 'now'), `o`.`material`, 'opening', `o`.`count`, `o`.`lengthMm`
FROM `offcuts` `o` JOIN `materials` `m` ON `m`.`id` = `o`.`material` ORDER BY `m`.`position`, `o`.`lengthMm` DESC;
