CREATE TABLE `mixWetCures` (
	`mix` text PRIMARY KEY NOT NULL,
	`hours` integer NOT NULL,
	FOREIGN KEY (`mix`) REFERENCES `mixes`(`id`) ON UPDATE no action ON DELETE cascade,
	CONSTRAINT "above_zero_hours" CHECK("mixWetCures"."hours" > 0)
);
