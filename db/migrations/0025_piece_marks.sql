ALTER TABLE `finishedPieces` ADD `mould` text;--> statement-breakpoint
ALTER TABLE `finishedPieces` ADD `filledAt` text;