CREATE TABLE `planPieces` (
	`place` integer PRIMARY KEY NOT NULL,
	`piece` text NOT NULL
);
--> statement-breakpoint
ALTER TABLE `plans` ADD `number` integer DEFAULT 0 NOT NULL;--> statement-breakpoint
INSERT INTO `planPieces` (`place`, `piece`) SELECT 0, `plan` FROM `plans`;
