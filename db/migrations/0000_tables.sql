CREATE TABLE `castingCuts` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`position` integer NOT NULL,
	`casting` text NOT NULL,
	`material` text NOT NULL,
	`lengthMm` real NOT NULL,
	`count` integer NOT NULL,
	FOREIGN KEY (`casting`) REFERENCES `castings`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`material`) REFERENCES `materials`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "above_zero_lengthMm" CHECK("castingCuts"."lengthMm" > 0),
	CONSTRAINT "not_negative_count" CHECK("castingCuts"."count" >= 0)
);
--> statement-breakpoint
CREATE TABLE `castingMaterials` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`position` integer NOT NULL,
	`casting` text NOT NULL,
	`material` text NOT NULL,
	`quantity` real NOT NULL,
	FOREIGN KEY (`casting`) REFERENCES `castings`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`material`) REFERENCES `materials`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "not_negative_quantity" CHECK("castingMaterials"."quantity" >= 0)
);
--> statement-breakpoint
CREATE TABLE `castings` (
	`id` text PRIMARY KEY NOT NULL,
	`position` integer NOT NULL,
	`name` text NOT NULL,
	`mix` text NOT NULL,
	`kg` real NOT NULL,
	`fillMinutes` integer NOT NULL,
	`stripMinutes` integer NOT NULL,
	`stripCrew` integer NOT NULL,
	`cleanMinutes` integer NOT NULL,
	`prepMinutes` integer NOT NULL,
	`rackSpaces` integer NOT NULL,
	FOREIGN KEY (`mix`) REFERENCES `mixes`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "not_empty_id" CHECK(length("castings"."id") > 0),
	CONSTRAINT "above_zero_fillMinutes" CHECK("castings"."fillMinutes" > 0),
	CONSTRAINT "not_negative_kg" CHECK("castings"."kg" >= 0),
	CONSTRAINT "not_negative_stripMinutes" CHECK("castings"."stripMinutes" >= 0),
	CONSTRAINT "not_negative_stripCrew" CHECK("castings"."stripCrew" >= 0),
	CONSTRAINT "not_negative_cleanMinutes" CHECK("castings"."cleanMinutes" >= 0),
	CONSTRAINT "not_negative_prepMinutes" CHECK("castings"."prepMinutes" >= 0),
	CONSTRAINT "not_negative_rackSpaces" CHECK("castings"."rackSpaces" >= 0)
);
--> statement-breakpoint
CREATE TABLE `changeUnderWay` (
	`id` integer PRIMARY KEY NOT NULL,
	`change` integer,
	FOREIGN KEY (`change`) REFERENCES `changes`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "one_change" CHECK("changeUnderWay"."id" = 1)
);
--> statement-breakpoint
CREATE TABLE `changes` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`at` text NOT NULL,
	`kind` text NOT NULL,
	`words` text NOT NULL,
	`before` text NOT NULL,
	`after` text NOT NULL,
	`undoneBy` integer,
	FOREIGN KEY (`undoneBy`) REFERENCES `changes`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "not_empty_kind" CHECK(length("changes"."kind") > 0)
);
--> statement-breakpoint
CREATE TABLE `notices` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`at` text NOT NULL,
	`words` text NOT NULL,
	`change` integer NOT NULL,
	`dismissedAt` text,
	FOREIGN KEY (`change`) REFERENCES `changes`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `rowChanges` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`change` integer NOT NULL,
	`tableName` text NOT NULL,
	`oldRow` text,
	`newRow` text,
	FOREIGN KEY (`change`) REFERENCES `changes`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE INDEX `rowChanges_change` ON `rowChanges` (`change`);--> statement-breakpoint
CREATE TABLE `customers` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`name` text NOT NULL,
	`phone` text,
	`note` text
);
--> statement-breakpoint
CREATE TABLE `kitCuts` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`position` integer NOT NULL,
	`kit` text NOT NULL,
	`material` text NOT NULL,
	`lengthMm` real NOT NULL,
	`count` integer NOT NULL,
	FOREIGN KEY (`kit`) REFERENCES `kits`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`material`) REFERENCES `materials`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "above_zero_lengthMm" CHECK("kitCuts"."lengthMm" > 0),
	CONSTRAINT "not_negative_count" CHECK("kitCuts"."count" >= 0)
);
--> statement-breakpoint
CREATE TABLE `kitParts` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`position` integer NOT NULL,
	`kit` text NOT NULL,
	`material` text NOT NULL,
	`quantity` real NOT NULL,
	FOREIGN KEY (`kit`) REFERENCES `kits`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`material`) REFERENCES `materials`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "not_negative_quantity" CHECK("kitParts"."quantity" >= 0)
);
--> statement-breakpoint
CREATE TABLE `kitPieces` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`position` integer NOT NULL,
	`kit` text NOT NULL,
	`casting` text NOT NULL,
	`count` integer NOT NULL,
	FOREIGN KEY (`kit`) REFERENCES `kits`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`casting`) REFERENCES `castings`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "not_negative_count" CHECK("kitPieces"."count" >= 0)
);
--> statement-breakpoint
CREATE TABLE `kits` (
	`id` text PRIMARY KEY NOT NULL,
	`position` integer NOT NULL,
	`name` text NOT NULL,
	`packMinutes` integer NOT NULL,
	CONSTRAINT "not_empty_id" CHECK(length("kits"."id") > 0),
	CONSTRAINT "not_negative_packMinutes" CHECK("kits"."packMinutes" >= 0)
);
--> statement-breakpoint
CREATE TABLE `incomings` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`position` integer NOT NULL,
	`material` text NOT NULL,
	`quantity` real NOT NULL,
	`on` text NOT NULL,
	`boughtOn` text,
	`price` real,
	`arrivedOn` text,
	FOREIGN KEY (`material`) REFERENCES `materials`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "date_on" CHECK("incomings"."on" = date("incomings"."on")),
	CONSTRAINT "date_boughtOn" CHECK("incomings"."boughtOn" = date("incomings"."boughtOn")),
	CONSTRAINT "date_arrivedOn" CHECK("incomings"."arrivedOn" = date("incomings"."arrivedOn")),
	CONSTRAINT "not_negative_quantity" CHECK("incomings"."quantity" >= 0),
	CONSTRAINT "not_negative_price" CHECK("incomings"."price" >= 0)
);
--> statement-breakpoint
CREATE TABLE `materials` (
	`id` text PRIMARY KEY NOT NULL,
	`position` integer NOT NULL,
	`name` text NOT NULL,
	`unit` text NOT NULL,
	`onHand` real NOT NULL,
	`pack` real NOT NULL,
	`leadDays` integer,
	`minimum` real NOT NULL,
	`unitPrice` real,
	`supplier` text,
	`shelfLifeDays` integer,
	`stickMm` real,
	`kerfMm` real NOT NULL,
	`openedNote` text,
	CONSTRAINT "not_empty_id" CHECK(length("materials"."id") > 0),
	CONSTRAINT "above_zero_pack" CHECK("materials"."pack" > 0),
	CONSTRAINT "above_zero_stickMm" CHECK("materials"."stickMm" > 0),
	CONSTRAINT "not_negative_onHand" CHECK("materials"."onHand" >= 0),
	CONSTRAINT "not_negative_leadDays" CHECK("materials"."leadDays" >= 0),
	CONSTRAINT "not_negative_minimum" CHECK("materials"."minimum" >= 0),
	CONSTRAINT "not_negative_unitPrice" CHECK("materials"."unitPrice" >= 0),
	CONSTRAINT "not_negative_shelfLifeDays" CHECK("materials"."shelfLifeDays" >= 0),
	CONSTRAINT "not_negative_kerfMm" CHECK("materials"."kerfMm" >= 0)
);
--> statement-breakpoint
CREATE TABLE `mixMaterials` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`position` integer NOT NULL,
	`mix` text NOT NULL,
	`material` text NOT NULL,
	`quantity` real NOT NULL,
	FOREIGN KEY (`mix`) REFERENCES `mixes`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`material`) REFERENCES `materials`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "not_negative_quantity" CHECK("mixMaterials"."quantity" >= 0)
);
--> statement-breakpoint
CREATE TABLE `mixes` (
	`id` text PRIMARY KEY NOT NULL,
	`position` integer NOT NULL,
	`name` text NOT NULL,
	`yieldKgPerBag` real NOT NULL,
	`bagStep` real NOT NULL,
	`maxBags` real NOT NULL,
	`crew` integer NOT NULL,
	`mixMinutes` integer NOT NULL,
	`workingMinutes` integer NOT NULL,
	`washMinutes` integer NOT NULL,
	`attendMinutes` integer NOT NULL,
	`demouldMinutes` integer NOT NULL,
	`cureHours` real NOT NULL,
	`referenceCelsius` real NOT NULL,
	`activationKelvin` real NOT NULL,
	`minCelsius` real,
	`maxCelsius` real,
	`protectHours` real NOT NULL,
	CONSTRAINT "not_empty_id" CHECK(length("mixes"."id") > 0),
	CONSTRAINT "above_zero_yieldKgPerBag" CHECK("mixes"."yieldKgPerBag" > 0),
	CONSTRAINT "above_zero_bagStep" CHECK("mixes"."bagStep" > 0),
	CONSTRAINT "above_zero_maxBags" CHECK("mixes"."maxBags" > 0),
	CONSTRAINT "not_negative_crew" CHECK("mixes"."crew" >= 0),
	CONSTRAINT "not_negative_mixMinutes" CHECK("mixes"."mixMinutes" >= 0),
	CONSTRAINT "not_negative_workingMinutes" CHECK("mixes"."workingMinutes" >= 0),
	CONSTRAINT "not_negative_washMinutes" CHECK("mixes"."washMinutes" >= 0),
	CONSTRAINT "not_negative_attendMinutes" CHECK("mixes"."attendMinutes" >= 0),
	CONSTRAINT "not_negative_demouldMinutes" CHECK("mixes"."demouldMinutes" >= 0),
	CONSTRAINT "not_negative_cureHours" CHECK("mixes"."cureHours" >= 0),
	CONSTRAINT "not_negative_activationKelvin" CHECK("mixes"."activationKelvin" >= 0),
	CONSTRAINT "not_negative_protectHours" CHECK("mixes"."protectHours" >= 0)
);
--> statement-breakpoint
CREATE TABLE `finishedPieces` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`position` integer NOT NULL,
	`casting` text NOT NULL,
	`count` integer NOT NULL,
	`readyAt` text,
	`order` text,
	FOREIGN KEY (`casting`) REFERENCES `castings`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`order`) REFERENCES `orders`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "not_negative_count" CHECK("finishedPieces"."count" >= 0)
);
--> statement-breakpoint
CREATE TABLE `mouldMakes` (
	`mould` text NOT NULL,
	`casting` text NOT NULL,
	`position` integer NOT NULL,
	`changeMinutes` integer NOT NULL,
	PRIMARY KEY(`mould`, `casting`),
	FOREIGN KEY (`mould`) REFERENCES `moulds`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`casting`) REFERENCES `castings`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "not_negative_changeMinutes" CHECK("mouldMakes"."changeMinutes" >= 0)
);
--> statement-breakpoint
CREATE TABLE `moulds` (
	`id` text PRIMARY KEY NOT NULL,
	`position` integer NOT NULL,
	`setFor` text NOT NULL,
	`condition` text NOT NULL,
	`prepped` integer NOT NULL,
	`repairedOn` text,
	`turnsSinceOil` integer NOT NULL,
	`oilEveryTurns` integer,
	`oilMinutes` integer NOT NULL,
	`oilDryMinutes` integer NOT NULL,
	`note` text,
	`damageNote` text,
	FOREIGN KEY (`setFor`) REFERENCES `castings`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "not_empty_id" CHECK(length("moulds"."id") > 0),
	CONSTRAINT "one_of_condition" CHECK("moulds"."condition" in ('ready', 'dirty', 'damaged', 'retired')),
	CONSTRAINT "flag_prepped" CHECK("moulds"."prepped" in (0, 1)),
	CONSTRAINT "date_repairedOn" CHECK("moulds"."repairedOn" = date("moulds"."repairedOn")),
	CONSTRAINT "not_negative_turnsSinceOil" CHECK("moulds"."turnsSinceOil" >= 0),
	CONSTRAINT "not_negative_oilMinutes" CHECK("moulds"."oilMinutes" >= 0),
	CONSTRAINT "not_negative_oilDryMinutes" CHECK("moulds"."oilDryMinutes" >= 0),
	CONSTRAINT "above_zero_oilEveryTurns" CHECK("moulds"."oilEveryTurns" > 0)
);
--> statement-breakpoint
CREATE TABLE `piecesInMould` (
	`mould` text PRIMARY KEY NOT NULL,
	`casting` text NOT NULL,
	`position` integer NOT NULL,
	`filledAt` text NOT NULL,
	`order` text,
	FOREIGN KEY (`order`) REFERENCES `orders`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`mould`,`casting`) REFERENCES `mouldMakes`(`mould`,`casting`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "not_empty_filledAt" CHECK(length("piecesInMould"."filledAt") > 0)
);
--> statement-breakpoint
CREATE TABLE `orderLines` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`order` text NOT NULL,
	`position` integer NOT NULL,
	`kit` text,
	`casting` text,
	`material` text,
	`quantity` real NOT NULL,
	FOREIGN KEY (`order`) REFERENCES `orders`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`kit`) REFERENCES `kits`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`casting`) REFERENCES `castings`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`material`) REFERENCES `materials`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "one_thing" CHECK(("orderLines"."kit" is not null) + ("orderLines"."casting" is not null) + ("orderLines"."material" is not null) = 1),
	CONSTRAINT "not_negative_quantity" CHECK("orderLines"."quantity" >= 0)
);
--> statement-breakpoint
CREATE TABLE `orders` (
	`id` text PRIMARY KEY NOT NULL,
	`position` integer NOT NULL,
	`customerId` integer,
	`wantedOn` text,
	`promisedOn` text,
	`heldUntil` text,
	`status` text NOT NULL,
	`weight` real NOT NULL,
	`note` text,
	`takenAt` text,
	`handedOverOn` text,
	FOREIGN KEY (`customerId`) REFERENCES `customers`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "not_empty_id" CHECK(length("orders"."id") > 0),
	CONSTRAINT "one_of_status" CHECK("orders"."status" in ('open', 'handed over', 'cancelled', 'lapsed')),
	CONSTRAINT "date_wantedOn" CHECK("orders"."wantedOn" = date("orders"."wantedOn")),
	CONSTRAINT "date_promisedOn" CHECK("orders"."promisedOn" = date("orders"."promisedOn")),
	CONSTRAINT "date_heldUntil" CHECK("orders"."heldUntil" = date("orders"."heldUntil")),
	CONSTRAINT "date_handedOverOn" CHECK("orders"."handedOverOn" = date("orders"."handedOverOn")),
	CONSTRAINT "not_negative_weight" CHECK("orders"."weight" >= 0)
);
--> statement-breakpoint
CREATE TABLE `plans` (
	`id` integer PRIMARY KEY NOT NULL,
	`revision` integer NOT NULL,
	`madeAt` text NOT NULL,
	`now` text NOT NULL,
	`goodFromMinute` integer NOT NULL,
	`goodUntilMinute` integer NOT NULL,
	`plan` text NOT NULL,
	CONSTRAINT "one_plan" CHECK("plans"."id" = 1)
);
--> statement-breakpoint
CREATE TABLE `temperatureSteps` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`position` integer NOT NULL,
	`from` text NOT NULL,
	`celsius` real NOT NULL,
	CONSTRAINT "date_from" CHECK("temperatureSteps"."from" = date("temperatureSteps"."from"))
);
--> statement-breakpoint
CREATE TABLE `closedDays` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`position` integer NOT NULL,
	`date` text NOT NULL,
	CONSTRAINT "date_date" CHECK("closedDays"."date" = date("closedDays"."date"))
);
--> statement-breakpoint
CREATE TABLE `extraWindows` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`position` integer NOT NULL,
	`date` text NOT NULL,
	`start` text NOT NULL,
	`end` text NOT NULL,
	`crew` integer NOT NULL,
	`allows` text NOT NULL,
	CONSTRAINT "date_date" CHECK("extraWindows"."date" = date("extraWindows"."date")),
	CONSTRAINT "not_negative_crew" CHECK("extraWindows"."crew" >= 0)
);
--> statement-breakpoint
CREATE TABLE `workWindows` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`position` integer NOT NULL,
	`rule` text NOT NULL,
	`from` text NOT NULL,
	`until` text,
	`start` text NOT NULL,
	`end` text NOT NULL,
	`crew` integer NOT NULL,
	`allows` text NOT NULL,
	CONSTRAINT "date_from" CHECK("workWindows"."from" = date("workWindows"."from")),
	CONSTRAINT "date_until" CHECK("workWindows"."until" = date("workWindows"."until")),
	CONSTRAINT "not_negative_crew" CHECK("workWindows"."crew" >= 0)
);
--> statement-breakpoint
CREATE TABLE `revisions` (
	`id` integer PRIMARY KEY NOT NULL,
	`revision` integer NOT NULL,
	CONSTRAINT "one_revision" CHECK("revisions"."id" = 1)
);
--> statement-breakpoint
CREATE TABLE `yards` (
	`id` integer PRIMARY KEY NOT NULL,
	`name` text NOT NULL,
	`timeZone` text NOT NULL,
	`horizonDays` integer NOT NULL,
	`mixers` integer NOT NULL,
	`rackSpaces` integer,
	`setUpMinutes` integer NOT NULL,
	`clearUpMinutes` integer NOT NULL,
	`handoverDays` text,
	`sessionsInHand` integer NOT NULL,
	`batchWorthDays` real NOT NULL,
	`bagWorthDays` real NOT NULL,
	`keep` text,
	CONSTRAINT "one_yard" CHECK("yards"."id" = 1),
	CONSTRAINT "horizon" CHECK("yards"."horizonDays" between 1 and 7300),
	CONSTRAINT "not_negative_mixers" CHECK("yards"."mixers" >= 0),
	CONSTRAINT "not_negative_rackSpaces" CHECK("yards"."rackSpaces" >= 0),
	CONSTRAINT "not_negative_setUpMinutes" CHECK("yards"."setUpMinutes" >= 0),
	CONSTRAINT "not_negative_clearUpMinutes" CHECK("yards"."clearUpMinutes" >= 0),
	CONSTRAINT "not_negative_sessionsInHand" CHECK("yards"."sessionsInHand" >= 0),
	CONSTRAINT "not_negative_batchWorthDays" CHECK("yards"."batchWorthDays" >= 0),
	CONSTRAINT "not_negative_bagWorthDays" CHECK("yards"."bagWorthDays" >= 0)
);
