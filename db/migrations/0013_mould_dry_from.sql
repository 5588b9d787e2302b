ALTER TABLE `moulds` ADD `dryFrom` text;--> statement-breakpoint
UPDATE `plans` SET `goodUntilMinute` = `goodFromMinute`;
