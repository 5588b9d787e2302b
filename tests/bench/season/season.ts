import type { Database } from '../../../db/open.ts';
import { daysBetween, type SeasonClock } from './clock.ts';
import type { Mishaps } from './mishaps.ts';
import { type SearchMode, searchNow } from './searching.ts';
import { type Move, movesBetween, type Standing, standingNow } from './standing.ts';
import type { Promised, SeasonTally } from './tally.ts';
import type { Visitor } from './visitor.ts';
import { couldBeKept, exportedYard } from './yard-export.ts';

/** Acts that go as the plan has it: by them no planned day should move. */
const QUIET_ACTS = ['time went by', 'work as planned', 'handed over', 'bought', 'arrived', 'searched'] as const;
export type QuietAct = (typeof QUIET_ACTS)[number];
/** Acts after which days may move. */
export type Event =
  | 'order taken'
  | 'mind changed'
  | 'piece scrapped'
  | 'day lost'
  | 'mould broken'
  | 'mould mended'
  | 'delivery late'
  | 'not done';

/** A season under way. */
export interface Season {
  clock: SeasonClock;
  database: Database;
  visitor: Visitor;
  mishaps: Mishaps;
  search: SearchMode;
  tally: SeasonTally;
  promises: Promised[];
  standing: Standing | null;
  /** Goods whose supplier has said that they come later; they come on that day. */
  toldLate: Set<string>;
  /** Days on which something was bought of a supplier: "2027-04-06 Builders merchant". */
  ways: Set<string>;
  /** Told each thing worth a line in the log. */
  log(words: string): void;
}

const isQuiet = (act: QuietAct | Event): act is QuietAct => QUIET_ACTS.some((quiet) => quiet === act);

export const promiseOf = ({ promises }: Season, id: string): Promised | undefined =>
  promises.find((promise) => promise.id === id);

/** A planned day that comes nearer harms nobody: it may without an event. */
const isForward = ({ from, to }: Move): boolean => to !== null && (from === null || to < from);

const countMoves = (season: Season, act: QuietAct | Event, moves: readonly Move[]): void => {
  for (const { id, from, to } of moves)
    season.log(`${act}: ${id} moves ${from} to ${to} (promised ${promiseOf(season, id)?.promisedOn})`);
  if (moves.length > 0)
    for (const { batch, reason } of season.standing?.plan.dropped ?? [])
      season.log(`${act}: dropped ${batch}, ${reason}`);
  if (!isQuiet(act)) return;
  const jumps = moves.filter((move) => !isForward(move));
  season.tally.forward += moves.length - jumps.length;
  season.tally.moves[act] = (season.tally.moves[act] ?? 0) + jumps.length;
  for (const { from, to } of jumps) if (from && to) season.tally.movedDays += Math.abs(daysBetween(from, to));
};

/** Marks who is shown late now and was not before, and who is in time again. */
const watchPromises = async (season: Season, act: QuietAct | Event): Promise<void> => {
  const { standing, tally, clock } = season;
  if (!standing) return;
  for (const promise of season.promises) {
    if (!promise.isCounted || promise.isGone || promise.isCancelled || promise.readyOn) continue;
    const on = standing.days.get(promise.id);
    if (on === undefined) continue;
    const isLate = on === null || on > promise.promisedOn;
    if (isLate && !promise.lateSince) {
      const avoidable = couldBeKept(await exportedYard(season.visitor), standing, promise.id);
      promise.lateSince = { on: clock.today(), act, avoidable };
      season.log(`LATE ${promise.id} ${on} (promised ${promise.promisedOn}) after ${act}; avoidable: ${avoidable}`);
    } else if (!isLate && promise.lateSince) {
      tally.alarms += 1;
      promise.lateSince = null;
      season.log(`IN TIME again ${promise.id} ${on} (promised ${promise.promisedOn}) after ${act}`);
    }
  }
};

/** After an act: the longer search where it is run after each, and then what the act has moved. */
export const settle = async (
  season: Season,
  act: QuietAct | Event,
  search = season.search === 'full',
): Promise<void> => {
  if (search && (await searchNow(season.database, season.clock.now()))) season.tally.searches += 1;
  const before = season.standing;
  season.standing = await standingNow(season.database, before);
  if (season.standing === before) return;
  countMoves(season, act, movesBetween(before, season.standing, season.clock.minute));
  await watchPromises(season, act);
};
