import type { Tx } from '../../../db/open.ts';
import { beginChange, endChange, pruneCaptured } from '../../../db/stores/change-store.ts';
import { addLateTaken } from '../../../db/stores/late-work-store.ts';
import { planHead, type StoredPlan, storedPlan } from '../../../db/stores/plan-store.ts';
import { bumpRevision } from '../../../db/stores/yard-store.ts';
import type { LateTaken, PlanOfWork } from '../../../shared/late-work.ts';
import type { PlanFile } from '../../../shared/plan.ts';
import { shortened } from '../../../shared/said-back.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import type { Moment } from '../core/compute-for-request.ts';
import { done, type Outcome } from '../core/context.ts';
import type { CachedPlan } from './cached-plan.ts';
import { type LateStep, lateTaken, mouldsOfStep } from './late-steps.ts';
import { asideLeft, workOfPlan } from './late-work.ts';
import { rememberPlanBefore } from './plans-before.ts';
import { movedOnly, type PromiseMove, promisesMoved, promisesOf } from './promises-moved.ts';
import {
  type CurrentPlan,
  carryPlanOn,
  type Remaking,
  readForRemake,
  remakePlan,
  type Unfixed,
} from './remake-plan.ts';
import { stepsToRecord } from './steps-to-record.ts';

export interface ChangeWords<T> {
  kind: string;
  /** What was done, as the maker would say it: "800 no. 2 marked damaged". */
  words: string | ((value: T) => string);
  /** Who does it, where that is known. */
  by?: string;
}

export interface Changed<T> {
  value: T;
  /** Names the change, to undo it. */
  change: number;
  words: string;
  /** What it did to the days of other orders. */
  moved: PromiseMove[];
  plan: PlanFile;
  /** The data after the change. */
  yard: YardFile;
  cached: CachedPlan;
}

/** How the plan after a change comes from the one before it. */
export interface Replanning<T> {
  /** What of the present plan is not to stay. */
  unfixed?: (value: T) => Unfixed;
  /** The plan less what was done as it has it; it is made anew only where that is null. */
  carryOn?: (plan: PlanFile, value: T) => PlanFile | null;
  /** What is left to be done and to be answered once work is recorded; without it, all that was. */
  workLeft?: () => PlanOfWork;
  /** What it takes off the list of late work and work under way, null for nothing; undefined: whatever is on it no more. */
  takes?: (value: T) => LateTaken | null | undefined;
}

/** A change may be undone for this long, and while it is among this many. */
export const UNDO_DAYS = 30;
const UNDO_CHANGES = 200;

/** A name or a note that somebody wrote too long makes no page of a notice. */
const LONGEST_WORDS = 300;

const daysBefore = (now: string, days: number) => new Date((minuteOf(now) - days * 1440) * 60_000).toISOString();

const toRecord = ({ yard, cached }: Pick<CurrentPlan, 'yard' | 'cached'>): LateStep[] =>
  stepsToRecord(yard, workOfPlan(cached.stored));

const mouldsOfBatch = (step: LateStep): string => (step.kind === 'batch' ? mouldsOfStep(step).sort().join('\n') : '');

/** Batches that have begun at another time than they had before: each stands in for one that is gone. */
const standIns = (gone: readonly LateStep[], fresh: readonly LateStep[]): Pick<LateTaken, 'instead'> => {
  const moulds = new Set(gone.filter(({ kind }) => kind === 'batch').map(mouldsOfBatch));
  const instead = fresh.filter((step) => step.kind === 'batch' && moulds.has(mouldsOfBatch(step)));
  return instead.length > 0 ? { instead: instead.map(({ name }) => name) } : {};
};

/** Late work, and work under way, that is none any more after a change is kept with it, so that undoing it brings it back. */
const goneSince = (before: CurrentPlan, after: Pick<CurrentPlan, 'yard' | 'cached'>): LateTaken | null => {
  const late = toRecord(before);
  if (late.length === 0) return null;
  const left = toRecord(after);
  const without = (steps: readonly LateStep[], others: readonly LateStep[]): LateStep[] => {
    const names = new Set(others.map(({ name }) => name));
    return steps.filter(({ name }) => !names.has(name));
  };
  const gone = without(late, left);
  return gone.length > 0 ? { ...lateTaken(gone), ...standIns(gone, without(left, late)) } : null;
};

/** The plan that stands; a change may have given other names to what is in it. */
const standingNow = async (tx: Tx, before: StoredPlan): Promise<StoredPlan> =>
  (await planHead(tx))?.number === before.number ? before : ((await storedPlan(tx)) ?? before);

/**
 * Does the work inside a write transaction as one change, and reads what the plan after it is made from. The caller rolls the
 * transaction back before he has that plan made (`planApart`): nothing is kept of it.
 */
export const readChange = async <T>(
  tx: Tx,
  moment: Moment,
  before: CurrentPlan,
  kind: string,
  work: (change: number) => Promise<Outcome<T>>,
  { unfixed }: Pick<Replanning<T>, 'unfixed'> = {},
): Promise<Outcome<Remaking>> => {
  const outcome = await work(await beginChange(tx, { at: moment.now, kind }));
  if (!outcome.ok) return outcome;
  await bumpRevision(tx);
  const stored = await standingNow(tx, before.cached.stored);
  return done(await readForRemake(tx, moment, stored, unfixed?.(outcome.value)));
};

/**
 * Does the work inside a write transaction as one change that can be undone, plans anew, and writes down what it did to
 * the days promised. When the work refuses, the caller has to roll back.
 */
export const recordChange = async <T>(
  tx: Tx,
  moment: Moment,
  before: CurrentPlan,
  { kind, words, by }: ChangeWords<T>,
  work: (change: number) => Promise<Outcome<T>>,
  { unfixed, carryOn, workLeft, takes }: Replanning<T> = {},
): Promise<Outcome<Changed<T>>> => {
  const { now } = moment;
  const promisedBefore = promisesOf(before.yard, before.plan);
  const change = await beginChange(tx, { at: now, kind, ...(by ? { by } : {}) });
  const outcome = await work(change);
  if (!outcome.ok) return outcome;
  const { value } = outcome;
  const said = shortened(typeof words === 'string' ? words : words(value), LONGEST_WORDS);
  await bumpRevision(tx);
  const stored = await standingNow(tx, before.cached.stored);
  const carry = (plan: PlanFile) => carryOn?.(plan, value) ?? null;
  const toDo = workLeft?.() ?? null;
  const carried = carryOn && (await carryPlanOn(tx, now, stored, carry, asideLeft(stored, toDo)));
  const left = toDo ? { work: toDo } : {};
  const remade = carried ?? (await remakePlan(tx, moment, stored, { ...left, ...unfixed?.(value) }));
  const { plan, yard, dropped, cached } = remade;
  const told = takes?.(value);
  const taken = told === undefined ? goneSince(before, { yard, cached }) : told;
  if (taken) await addLateTaken(tx, change, minuteOf(now), taken);
  const promisedAfter = promisesOf(yard, plan);
  rememberPlanBefore(moment.database, change, before.cached.stored);
  await endChange(tx, change, { words: said, ...movedOnly(promisedBefore, promisedAfter), dropped });
  await pruneCaptured(tx, daysBefore(now, UNDO_DAYS), UNDO_CHANGES);
  const moved = promisesMoved(promisedBefore, promisedAfter);
  return { ok: true, value: { value, change, words: said, moved, plan, yard, cached } };
};
