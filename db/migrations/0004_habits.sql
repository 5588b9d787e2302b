CREATE TABLE `guesses` (
	`kind` text NOT NULL,
	`id` text NOT NULL,
	`figure` text NOT NULL,
	PRIMARY KEY(`kind`, `id`, `figure`),
	CONSTRAINT "not_empty_figure" CHECK(length("guesses"."figure") > 0),
	CONSTRAINT "one_of_kind" CHECK("guesses"."kind" in ('yard', 'mix', 'casting', 'mould', 'material', 'kit'))
);
--> statement-breakpoint
CREATE TABLE `typedFigures` (
	`kind` text NOT NULL,
	`id` text NOT NULL,
	`figure` text NOT NULL,
	`typed` text NOT NULL,
	PRIMARY KEY(`kind`, `id`, `figure`),
	CONSTRAINT "not_empty_figure" CHECK(length("typedFigures"."figure") > 0),
	CONSTRAINT "not_empty_typed" CHECK(length("typedFigures"."typed") > 0),
	CONSTRAINT "one_of_kind" CHECK("typedFigures"."kind" in ('yard', 'mix', 'casting', 'mould', 'material', 'kit'))
);
--> statement-breakpoint
CREATE TABLE `yardHabits` (
	`id` integer PRIMARY KEY NOT NULL,
	`currency` text NOT NULL,
	`weekStart` text NOT NULL,
	`demo` integer NOT NULL,
	CONSTRAINT "one_yard_habits" CHECK("yardHabits"."id" = 1),
	CONSTRAINT "currency" CHECK(length("yardHabits"."currency") = 3),
	CONSTRAINT "one_of_weekStart" CHECK("yardHabits"."weekStart" in ('MO', 'TU', 'WE', 'TH', 'FR', 'SA', 'SU')),
	CONSTRAINT "flag_demo" CHECK("yardHabits"."demo" in (0, 1))
);
