ALTER TABLE `materials` ADD `opensBy` real CONSTRAINT "above_zero_opensBy" CHECK("opensBy" > 0);--> statement-breakpoint
ALTER TABLE `materials` ADD `openedDays` integer CONSTRAINT "not_negative_openedDays" CHECK("openedDays" >= 0);--> statement-breakpoint
CREATE INDEX `stockEntries_dated` ON `stockEntries` (`material`,`useBy`,`openedAt`,`quantity`) WHERE "stockEntries"."useBy" is not null or "stockEntries"."openedAt" is not null;
