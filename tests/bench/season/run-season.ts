import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { openDatabase } from '../../../db/open.ts';
import { materialsInOrder } from '../../../db/stores/material-store.ts';
import { stockBook } from '../../../db/stores/stock-store.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { createApp } from '../../../src/http/app.ts';
import { type Arrival, arrivalsOf } from './arrivals.ts';
import { buyAsSaid } from './buyer.ts';
import { daysAfter, StandStill, seasonClock } from './clock.ts';
import { serve } from './counter.ts';
import { comesAt, comingToday, handOver, judgeDay } from './hand-over.ts';
import { changeMind } from './minds.ts';
import { breakMould, damagedIn, loseDay, mendDue } from './misfortune.ts';
import { type Mishaps, mishapsOf, NO_MISHAPS } from './mishaps.ts';
import { auditNight, countChangedPours, type Evening, eveningPours } from './night.ts';
import type { SeasonOptions } from './options.ts';
import { type Season, settle } from './season.ts';
import type { SeasonYard } from './season-yard.ts';
import { notThereBy } from './stock-kept.ts';
import { emptyTally, openPromise, type Promised, type SeasonTally } from './tally.ts';
import { visitorOf } from './visitor.ts';
import { countVanished, underWay, workUntil } from './worker.ts';
import { exportedYard } from './yard-export.ts';

/** Somebody comes or calls at a time of the day. */
interface Outside {
  time: string;
  /** What it is called where a step under way vanishes by it; hand-overs look after that themselves. */
  name: string | null;
  happen(): Promise<void>;
}

const MORNING = '06:00';
const EVENING = '22:00';
const NIGHT = '23:30';
const CALLS = '12:30';

const outsideOf = (season: Season, arrivals: readonly Arrival[], today: string): Outside[] =>
  [
    ...arrivals
      .filter(({ date }) => date === today)
      .map((one) => ({ time: one.time, name: `order of ${one.customer}`, happen: () => serve(season, one) })),
    ...arrivals
      .filter(({ mind }) => mind?.on === today)
      .map((one) => ({ time: CALLS, name: `call of ${one.customer}`, happen: () => changeMind(season, one) })),
    ...comingToday(season).map((one) => ({
      ...{ time: comesAt(one), name: null, happen: () => handOver(season, one) },
    })),
  ].sort((a, b) => a.time.localeCompare(b.time));

const happen = async (season: Season, { name, happen }: Outside): Promise<void> => {
  const begun = name === null ? [] : await underWay(season);
  await happen();
  await countVanished(season, begun, name ?? '');
};

interface Course {
  arrivals: readonly Arrival[];
  moulds: readonly string[];
  /** Damaged moulds, with the day on which they are mended. */
  due: Map<string, string>;
  evening: Evening | null;
}

/** One day: the morning's look at everything, the day's work and visits in order of time, and what stands in the evening. */
const liveDay = async (season: Season, course: Course, today: string): Promise<void> => {
  const { clock } = season;
  clock.setOn(clock.at(today, MORNING));
  await countChangedPours(season, course.evening);
  await mendDue(season, course.due);
  await loseDay(season);
  await breakMould(season, course.due, course.moulds);
  await buyAsSaid(season);
  for (const outside of outsideOf(season, course.arrivals, today)) {
    await workUntil(season, clock.at(today, outside.time));
    await happen(season, outside);
  }
  await workUntil(season, clock.at(today, EVENING));
  for (const promise of comingToday(season)) await handOver(season, promise);
  judgeDay(season);
  clock.setOn(clock.at(today, NIGHT));
  await season.visitor.page('/today');
  await settle(season, 'time went by');
  if (season.search === 'short') await settle(season, 'searched', true);
  await auditNight(season);
  course.evening = eveningPours(season);
};

/** One day after another, up to where the clock stands still. */
const liveDays = async (season: Season, course: Course, from: string, days: number): Promise<void> => {
  try {
    for (let day = 0; day < days; day += 1) await liveDay(season, course, daysAfter(from, day));
  } catch (error) {
    if (!(error instanceof StandStill)) throw error;
  }
};

/** Works on a database file that is gone afterwards, unless it is to be kept in a folder. */
const withDatabase = async <T>(
  { name }: SeasonYard,
  keep: string | null,
  work: (url: string) => Promise<T>,
): Promise<T> => {
  if (keep) return work(`file:${join(resolve(keep), `${name}.db`)}`);
  const folder = mkdtempSync(join(tmpdir(), 'season-'));
  try {
    return await work(`file:${join(folder, 'yard.db')}`);
  } finally {
    rmSync(folder, { recursive: true });
  }
};

/** Dates that were given before the season. */
const givenBefore = ({ orders }: YardFile, from: string): Promised[] =>
  orders.flatMap(({ id, customer = id, due }) =>
    due === undefined
      ? []
      : [openPromise({ id, customer, takenOn: from, promisedOn: due, quotedDays: 0, isCounted: false })],
  );

/** What came of a season, and what it was lived through with, so that another planner can live through the same. */
export interface LivedSeason {
  tally: SeasonTally;
  start: YardFile;
  arrivals: readonly Arrival[];
  mishaps: Mishaps;
}

/**
 * A season of a yard in closed loop: customers are told days by the page and take them, the work is done as Today says,
 * materials are bought as Buying says, and each promise is judged on its day. The same options give the same season.
 */
export const runSeason = (
  yard: SeasonYard,
  { days, seed, search, disturbed, keep, stop }: SeasonOptions,
  log: (line: string) => void = () => {},
): Promise<LivedSeason> =>
  withDatabase(yard, keep, async (url) => {
    const begun = process.cpuUsage();
    const database = await openDatabase({ url });
    const { from, timeZone } = yard;
    const clock = seasonClock(timeZone, 0, stop ? Date.parse(stop) / 60_000 : undefined);
    clock.setOn(clock.at(from, '05:00'));
    await database.write((tx) => yard.seed(tx, clock.now()));
    const visitor = visitorOf(createApp({ database, now: clock.now }), clock);
    const mishaps = disturbed ? mishapsOf(seed, yard.name, from) : NO_MISHAPS;
    const season: Season = {
      ...{ clock, database, visitor, mishaps, search, tally: emptyTally(yard.name), promises: [], standing: null },
      ...{ toldLate: new Set(), ways: new Set() },
      log: (words) => log(`${clock.now()} ${words}`),
    };
    const { ordersAWeek, asks, name } = yard;
    const arrivals = arrivalsOf({ name, from, days, ordersAWeek, asks, seed, disturbed });
    const start = await exportedYard(visitor);
    season.promises.push(...givenBefore(start, from));
    const course: Course = { arrivals, moulds: start.moulds.map(({ id }) => id), due: damagedIn(start), evening: null };
    await liveDays(season, course, from, days);
    const { book, materials } = await database.read(async (tx) => ({
      ...{ book: await stockBook(tx), materials: await materialsInOrder(tx) },
    }));
    Object.assign(season.tally, notThereBy(book, materials, timeZone));
    await database.close();
    season.tally.refused = visitor.refused;
    season.tally.days = days;
    const { user, system } = process.cpuUsage(begun);
    season.tally.seconds = Math.round((user + system) / 1e6);
    return { tally: season.tally, start, arrivals, mishaps };
  });
