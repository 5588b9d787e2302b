CREATE TABLE `mixWaters` (
	`mix` text PRIMARY KEY NOT NULL,
	`litresPerBag` real NOT NULL,
	FOREIGN KEY (`mix`) REFERENCES `mixes`(`id`) ON UPDATE no action ON DELETE cascade,
	CONSTRAINT "above_zero_litresPerBag" CHECK("mixWaters"."litresPerBag" > 0)
);
