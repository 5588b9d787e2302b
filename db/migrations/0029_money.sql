CREATE TABLE `kitPrices` (
	`kit` text PRIMARY KEY NOT NULL,
	`price` real NOT NULL,
	FOREIGN KEY (`kit`) REFERENCES `kits`(`id`) ON UPDATE no action ON DELETE cascade,
	CONSTRAINT "not_negative_price" CHECK("kitPrices"."price" >= 0)
);
--> statement-breakpoint
CREATE TABLE `orderMoney` (
	`order` text PRIMARY KEY NOT NULL,
	`price` real,
	`deposit` real,
	`estimate` text,
	`quote` text,
	FOREIGN KEY (`order`) REFERENCES `orders`(`id`) ON UPDATE no action ON DELETE cascade,
	CONSTRAINT "not_negative_price" CHECK("orderMoney"."price" >= 0),
	CONSTRAINT "not_negative_deposit" CHECK("orderMoney"."deposit" >= 0)
);
--> statement-breakpoint
CREATE TABLE `orderPayments` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`position` integer NOT NULL,
	`order` text NOT NULL,
	`on` text NOT NULL,
	`amount` real NOT NULL,
	`back` integer NOT NULL,
	`note` text,
	FOREIGN KEY (`order`) REFERENCES `orders`(`id`) ON UPDATE no action ON DELETE cascade,
	CONSTRAINT "date_on" CHECK("orderPayments"."on" = date("orderPayments"."on")),
	CONSTRAINT "not_negative_amount" CHECK("orderPayments"."amount" >= 0),
	CONSTRAINT "flag_back" CHECK("orderPayments"."back" in (0, 1))
);
--> statement-breakpoint
CREATE TABLE `yardCosts` (
	`id` integer PRIMARY KEY NOT NULL,
	`wageHour` real,
	`sessionFixed` real,
	`rejectPercent` real,
	`marginPercent` real,
	`mouldCost` real,
	`mouldTurns` integer,
	CONSTRAINT "one_yard_costs" CHECK("yardCosts"."id" = 1),
	CONSTRAINT "not_negative_wageHour" CHECK("yardCosts"."wageHour" >= 0),
	CONSTRAINT "not_negative_sessionFixed" CHECK("yardCosts"."sessionFixed" >= 0),
	CONSTRAINT "not_negative_rejectPercent" CHECK("yardCosts"."rejectPercent" >= 0),
	CONSTRAINT "not_negative_marginPercent" CHECK("yardCosts"."marginPercent" >= 0),
	CONSTRAINT "not_negative_mouldCost" CHECK("yardCosts"."mouldCost" >= 0),
	CONSTRAINT "above_zero_mouldTurns" CHECK("yardCosts"."mouldTurns" > 0)
);
--> statement-breakpoint
ALTER TABLE `moulds` ADD `cost` real;--> statement-breakpoint
ALTER TABLE `moulds` ADD `costTurns` integer;