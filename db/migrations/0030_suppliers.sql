CREATE TABLE `materialBuyings` (
	`material` text PRIMARY KEY NOT NULL,
	`facts` text NOT NULL,
	FOREIGN KEY (`material`) REFERENCES `materials`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE TABLE `suppliers` (
	`name` text PRIMARY KEY NOT NULL,
	`facts` text NOT NULL,
	CONSTRAINT "not_empty_name" CHECK(length("suppliers"."name") > 0)
);
--> statement-breakpoint
ALTER TABLE `yardHabits` ADD `floatDays` integer DEFAULT 1 NOT NULL;