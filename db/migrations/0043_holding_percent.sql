PRAGMA foreign_keys=OFF;--> statement-breakpoint
CREATE TABLE `__new_yardCosts` (
	`id` integer PRIMARY KEY NOT NULL,
	`wageHour` real,
	`sessionFixed` real,
	`rejectPercent` real,
	`marginPercent` real,
	`mouldCost` real,
	`mouldTurns` integer,
	`holdingPercent` real,
	CONSTRAINT "one_yard_costs" CHECK("__new_yardCosts"."id" = 1),
	CONSTRAINT "not_negative_wageHour" CHECK("__new_yardCosts"."wageHour" >= 0),
	CONSTRAINT "not_negative_sessionFixed" CHECK("__new_yardCosts"."sessionFixed" >= 0),
	CONSTRAINT "not_negative_rejectPercent" CHECK("__new_yardCosts"."rejectPercent" >= 0),
	CONSTRAINT "not_negative_marginPercent" CHECK("__new_yardCosts"."marginPercent" >= 0),
	CONSTRAINT "not_negative_mouldCost" CHECK("__new_yardCosts"."mouldCost" >= 0),
	CONSTRAINT "not_negative_holdingPercent" CHECK("__new_yardCosts"."holdingPercent" >= 0),
	CONSTRAINT "above_zero_mouldTurns" CHECK("__new_yardCosts"."mouldTurns" > 0)
);
--> statement-breakpoint
INSERT INTO `__new_yardCosts`("id", "wageHour", "sessionFixed", "rejectPercent", "marginPercent", "mouldCost", "mouldTurns", "holdingPercent") SELECT "id", "wageHour", "sessionFixed", "rejectPercent", "marginPercent", "mouldCost", "mouldTurns", NULL FROM `yardCosts`;--> statement-breakpoint
DROP TABLE `yardCosts`;--> statement-breakpoint
ALTER TABLE `__new_yardCosts` RENAME TO `yardCosts`;--> statement-breakpoint
PRAGMA foreign_keys=ON;