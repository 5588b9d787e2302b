ALTER TABLE `materials` ADD `inSheets` integer;--> statement-breakpoint
ALTER TABLE `stockEntries` ADD `widthMm` real;--> statement-breakpoint
INSERT INTO `stockEntries` (`at`, `material`, `kind`, `quantity`, `lengthMm`, `widthMm`)
SELECT strftime('%Y-%m-%dT%H:%M:%SZ', 'now'), `m`.`id`, 'opening', `r`.`value` ->> 'count', `r`.`value` ->> 'lengthMm', `r`.`value` ->> 'widthMm'
FROM `materials` `m`, json_each(`m`.`rests`) `r` ORDER BY `m`.`position`;
