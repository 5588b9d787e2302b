CREATE TABLE `offcuts` (
	`material` text NOT NULL,
	`lengthMm` real NOT NULL,
	`count` integer NOT NULL,
	PRIMARY KEY(`material`, `lengthMm`),
	FOREIGN KEY (`material`) REFERENCES `materials`(`id`) ON UPDATE no action ON DELETE cascade,
	CONSTRAINT "above_zero_lengthMm" CHECK("offcuts"."lengthMm" > 0),
	CONSTRAINT "above_zero_count" CHECK("offcuts"."count" > 0)
);
--> statement-breakpoint
INSERT INTO `changes` (`at`, `kind`, `words`, `before`, `after`)
SELECT strftime('%Y-%m-%dT%H:%M:%SZ', 'now'), 'counted',
	CASE WHEN `s`.`restMm` >= `s`.`usableMm`
		THEN `s`.`name` || ': what is left of an opened one is an offcut of ' || `s`.`restMm` || ' mm now. It was counted as ' || round(`s`.`share`, 2) || ' of one; look at it once'
		ELSE `s`.`name` || ': ' || round(`s`.`share`, 2) || ' of one is no longer counted. That is too short for anything that is cut from it' END,
	'[]', '[]'
FROM (
	SELECT `m`.`name`, `m`.`onHand` - CAST(`m`.`onHand` + 1e-6 AS INTEGER) AS `share`,
		CAST((`m`.`onHand` - CAST(`m`.`onHand` + 1e-6 AS INTEGER)) * `m`.`stickMm` + 1e-6 AS INTEGER) AS `restMm`,
		(SELECT min(`lengthMm`) FROM (SELECT `material`, `lengthMm`, `count` FROM `castingCuts` UNION ALL SELECT `material`, `lengthMm`, `count` FROM `kitCuts`) `c` WHERE `c`.`material` = `m`.`id` AND `c`.`count` > 0) AS `usableMm`
	FROM `materials` `m` WHERE `m`.`stickMm` IS NOT NULL
) `s` WHERE `s`.`restMm` >= 1;
--> statement-breakpoint
INSERT INTO `offcuts` (`material`, `lengthMm`, `count`)
SELECT `s`.`id`, `s`.`restMm`, 1 FROM (
	SELECT `m`.`id`,
		CAST((`m`.`onHand` - CAST(`m`.`onHand` + 1e-6 AS INTEGER)) * `m`.`stickMm` + 1e-6 AS INTEGER) AS `restMm`,
		(SELECT min(`lengthMm`) FROM (SELECT `material`, `lengthMm`, `count` FROM `castingCuts` UNION ALL SELECT `material`, `lengthMm`, `count` FROM `kitCuts`) `c` WHERE `c`.`material` = `m`.`id` AND `c`.`count` > 0) AS `usableMm`
	FROM `materials` `m` WHERE `m`.`stickMm` IS NOT NULL
) `s` WHERE `s`.`restMm` >= 1 AND `s`.`restMm` >= `s`.`usableMm`;
--> statement-breakpoint
UPDATE `revisions` SET `revision` = `revision` + 1
WHERE EXISTS (SELECT 1 FROM `materials` WHERE `stickMm` IS NOT NULL AND `onHand` <> CAST(`onHand` + 1e-6 AS INTEGER));
--> statement-breakpoint
DELETE FROM `typedFigures` WHERE `kind` = 'material' AND `figure` = 'onHand'
	AND `id` IN (SELECT `id` FROM `materials` WHERE `stickMm` IS NOT NULL AND `onHand` <> CAST(`onHand` + 1e-6 AS INTEGER));
--> statement-breakpoint
UPDATE `materials` SET `onHand` = CAST(`onHand` + 1e-6 AS INTEGER) WHERE `stickMm` IS NOT NULL;
