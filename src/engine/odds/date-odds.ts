import { dateOfDay } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import type { YardRecord } from '../../../shared/yard-record.ts';
import { canonicalYard } from '../canonical-yard.ts';
import { compile } from '../decoder/compile.ts';
import { type DecoderState, decoderStateOf } from '../decoder/decoder-state.ts';
import { type Dispatch, dispatchOf } from '../decoder/dispatch.ts';
import { NEVER, type Problem } from '../decoder/problem.ts';
import { settle } from '../decoder/settle.ts';
import { handoverOn } from '../quote/promise.ts';
import { dispatchFrom, type PlanMemory } from '../search/memory.ts';
import { earliestDueFirst } from '../search/rules.ts';
import { beliefsOf } from './beliefs.ts';
import { lived } from './live.ts';
import { type Cause, mishapsDrawn } from './mishaps.ts';

/** Of so many courses of things: by which day an order could be handed over in how many of them. */
export interface DateOdds {
  draws: number;
  /** Each hand-over day on which it was ready in some course, and in how many it was by then. */
  days: readonly { on: string; by: number }[];
  /** What its days went with most; null where nothing made a difference. */
  dependsOn: Cause | null;
  restsOn: { pieces: number; sessions: number; deliveries: number };
  /** There is enough on record to promise by. */
  isEnough: boolean;
}

/** An order of a yard, when it is complete by the plan, and what its odds are worked out from. */
export interface DateAsked {
  yard: YardFile;
  order: string;
  /** The minute at which it is complete where nothing goes wrong; by the memory, where nothing is said. */
  completesAt?: number;
  memory?: PlanMemory;
  record: YardRecord;
  /** How many courses of things are tried; counted by the size of the yard where nothing is said. */
  draws?: number;
  seed?: number;
}

/** Pours worked in all of an answer, about, and how many courses are tried at the most and at the least. */
const POURS_IN_ALL = 120_000;
const DRAWS = { most: 200, least: 100 };

/** Half as many again as are poured, and this many more, can be poured anew. */
const anewIn = (pours: number): number => Math.ceil(pours / 2) + 50;

const piecesOf = ({ orders }: Problem): number => orders.reduce((n, { pieceCount }) => n + pieceCount, 0);

/**
 * A yard made ready to be lived through: nothing is fixed, for what is fixed can no more be done than all else where a day is lost;
 * and materials are asked for as long as they could come late.
 */
const problemOf = (yard: YardFile, daysLate: readonly number[]): Problem => {
  const { keep: _keep, ...free } = yard;
  const problem = compile(free);
  const late = Math.max(...daysLate) * 24 * 60;
  const mixes = problem.mixes.map((mix) => ({ ...mix, scarceUntil: Math.min(NEVER, mix.scarceUntil + late) }));
  return { ...problem, mixes };
};

/** The dispatch of a memory as it is worked by here: who gets what is not what the plan that stands had. */
const dispatchIn = (problem: Problem, memory: PlanMemory | undefined): Dispatch =>
  memory ? dispatchFrom(problem, memory) : dispatchOf(earliestDueFirst(problem));

interface Course {
  completesAt: number;
  counts: ReadonlyMap<string, { cause: Cause; count: number }>;
}

const meanOf = (list: readonly number[]): number => list.reduce((sum, x) => sum + x, 0) / list.length;

/** The cause whose count goes with the days most (covariance); null where none goes with later ones. */
const dependsOn = (courses: readonly Course[], days: readonly number[]): Cause | null => {
  const causes = new Map(courses.flatMap(({ counts }) => [...counts].map(([key, { cause }]) => [key, cause] as const)));
  const mean = meanOf(days);
  let [most, which]: [number, Cause | null] = [0, null];
  for (const [key, cause] of causes) {
    const together = courses.reduce((sum, { counts }, i) => sum + (counts.get(key)?.count ?? 0) * (days[i]! - mean), 0);
    if (together > most) [most, which] = [together, cause];
  }
  return which;
};

const coursesOf = (state: DecoderState, dispatch: Dispatch, order: number, asked: DateAsked): Course[] => {
  const { problem } = state;
  const beliefs = beliefsOf(asked.record);
  const pours = piecesOf(problem);
  const draws =
    asked.draws ?? Math.max(DRAWS.least, Math.min(DRAWS.most, Math.floor(POURS_IN_ALL / Math.max(1, pours))));
  return Array.from({ length: draws }, (_, draw) => {
    const mishaps = mishapsDrawn(problem, beliefs, { seed: asked.seed ?? 1, draw, most: anewIn(pours) });
    const completesAt = lived(state, dispatch, order, mishaps);
    return { completesAt, counts: mishaps.counts };
  });
};

/**
 * The odds of an order's date: the plan is lived through many times with what goes wrong drawn by the yard's record, each by the
 * same seed on any machine. Where the plan that is known has it on another minute than the memory has, all are as much later or
 * sooner, and none before it. The order in which the yard lists things means nothing. Null where the order is not made in this yard even if all goes well.
 */
export const dateOdds = (asked: DateAsked): DateOdds | null => {
  const { restsOn, isEnough, daysLate } = beliefsOf(asked.record);
  const { yard } = canonicalYard(asked.yard);
  const problem = problemOf(yard, daysLate);
  const order = yard.orders.findIndex(({ id }) => id === asked.order);
  const dispatch = dispatchIn(problem, asked.memory);
  const state = decoderStateOf(problem, dispatch, undefined, anewIn(piecesOf(problem)));
  settle(state, dispatch);
  if (state.orders.excluded[order]) return null;
  const plain = lived(state, dispatch, order, null);
  if (plain >= NEVER) return null;
  const planned = asked.completesAt ?? plain;
  const courses = coursesOf(state, dispatch, order, asked);
  const days = courses.map(({ completesAt }) => {
    const at = Math.max(planned, completesAt + planned - plain);
    return at < problem.horizonEnd ? handoverOn(problem, at) : NEVER;
  });
  const sorted = [...new Set(days)].filter((day) => day < NEVER).sort((a, b) => a - b);
  const last = problem.today + asked.yard.yard.horizonDays;
  return {
    draws: courses.length,
    days: sorted.map((on) => ({ on: dateOfDay(on), by: days.filter((day) => day <= on).length })),
    dependsOn: dependsOn(
      courses,
      days.map((day) => Math.min(day, last)),
    ),
    ...{ restsOn, isEnough },
  };
};

/**
 * The first day by which an order is ready in so great a share of all courses; null where that is beyond the horizon.
 *
 * Example: of 400, 320 by Saturday and 396 by the Saturday after: `dayWith(odds, 0.9)` is the second.
 */
export const dayWith = ({ draws, days }: Pick<DateOdds, 'draws' | 'days'>, share: number): string | null =>
  days.find(({ by }) => by >= share * draws - 1e-9)?.on ?? null;
