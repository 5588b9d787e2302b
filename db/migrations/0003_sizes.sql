CREATE TABLE `castingSizes` (
	`casting` text PRIMARY KEY NOT NULL,
	`lengthMm` real NOT NULL,
	`heightMm` real NOT NULL,
	`thicknessMm` real NOT NULL,
	`lengthTyped` text NOT NULL,
	`heightTyped` text NOT NULL,
	`thicknessTyped` text NOT NULL,
	FOREIGN KEY (`casting`) REFERENCES `castings`(`id`) ON UPDATE no action ON DELETE cascade,
	CONSTRAINT "above_zero_lengthMm" CHECK("castingSizes"."lengthMm" > 0),
	CONSTRAINT "above_zero_heightMm" CHECK("castingSizes"."heightMm" > 0),
	CONSTRAINT "above_zero_thicknessMm" CHECK("castingSizes"."thicknessMm" > 0)
);
--> statement-breakpoint
CREATE TABLE `kitSizes` (
	`kit` text PRIMARY KEY NOT NULL,
	`size` text NOT NULL,
	FOREIGN KEY (`kit`) REFERENCES `kits`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE TABLE `yardUnits` (
	`id` integer PRIMARY KEY NOT NULL,
	`system` text NOT NULL,
	CONSTRAINT "one_yard_units" CHECK("yardUnits"."id" = 1),
	CONSTRAINT "one_of_system" CHECK("yardUnits"."system" in ('metric', 'US'))
);
