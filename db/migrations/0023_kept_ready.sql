CREATE TABLE `keptCastings` (
	`casting` text PRIMARY KEY NOT NULL,
	`count` integer NOT NULL,
	FOREIGN KEY (`casting`) REFERENCES `castings`(`id`) ON UPDATE no action ON DELETE cascade,
	CONSTRAINT "above_zero_count" CHECK("keptCastings"."count" > 0)
);
--> statement-breakpoint
CREATE TABLE `keptKits` (
	`kit` text PRIMARY KEY NOT NULL,
	`count` integer NOT NULL,
	FOREIGN KEY (`kit`) REFERENCES `kits`(`id`) ON UPDATE no action ON DELETE cascade,
	CONSTRAINT "above_zero_count" CHECK("keptKits"."count" > 0)
);
