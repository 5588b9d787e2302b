import type { Tx } from '../../../db/open.ts';
import { promisedDays } from '../../../db/stores/order-store.ts';
import { type StoredPlan, savePlan } from '../../../db/stores/plan-store.ts';
import { fixedHours, loadYardFile, revision } from '../../../db/stores/yard-store.ts';
import type { LateTaken } from '../../../shared/late-work.ts';
import type { Keep, PlanFile } from '../../../shared/plan.ts';
import { type Minute, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { asOf } from '../../engine/book/as-of.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import type { PlanMemory } from '../../engine/search/memory.ts';
import { computeForRequest, type Moment } from '../core/compute-for-request.ts';
import { yieldThread } from '../core/yield-thread.ts';
import { withBegunSetUps } from './begun-set-ups.ts';
import { type CachedPlan, cachedPlan, fileAt } from './cached-plan.ts';
import { dropsOf, type FixedPlan, fixedPlan, type StoredDrop, withKeep } from './fixed-plan.ts';
import { nextGraceEnd } from './grace.ts';
import type { PlanOfWork } from './late-work.ts';
import { withLateBack } from './late-work-back.ts';
import { withLateWorkDone } from './late-work-done.ts';
import { standingPours } from './standing-pours.ts';

export interface CurrentPlan {
  plan: PlanFile;
  /** The data it was made from, as of the present now, with what has to stay of the plan in `keep`. */
  yard: YardFile;
  revision: number;
  /** The instant it was made for. */
  now: string;
  /** How it was come by: what is asked beside it is asked from there. */
  memory?: PlanMemory;
  cached: CachedPlan;
}

/**
 * The minutes between which a plan made at `now` is good: its own date, and no longer than the work of the session under
 * way, or of the next one, may be written down.
 */
const goodMinutes = (yard: YardFile): { from: Minute; until: Minute } => {
  const calendar = calendarOf(yard.yard.timeZone);
  const day = calendar.dayOf(minuteOf(yard.yard.now));
  return { from: calendar.midnightOf(day), until: Math.min(calendar.midnightOf(day + 1), nextGraceEnd(yard)) };
};

const isGood = ({ goodFromMinute, goodUntilMinute }: StoredPlan, now: string): boolean => {
  const minute = minuteOf(now);
  return minute >= goodFromMinute && minute < goodUntilMinute;
};

/** The stored plan, unless something it depends on has changed or its time has passed. */
export const goodPlan = async (tx: Tx, { database, now }: Moment): Promise<CurrentPlan | null> => {
  const cached = await cachedPlan(tx, { database, now });
  return cached && isGood(cached.stored, now) ? currentAt(cached, now) : null;
};

/** What was last shown of each cached plan: the same to all requests of one minute. */
const shown = new WeakMap<CachedPlan, CurrentPlan>();

/** A cached plan as of an instant, and in its data what has to stay of the plan from then on. */
const currentAt = (cached: CachedPlan, now: string): CurrentPlan => {
  const before = shown.get(cached);
  if (before?.yard.yard.now === now) return before;
  const { stored, hours } = cached;
  const file = fileAt(cached, now);
  const begun = withBegunSetUps(file, stored.plan);
  const { keep } = fixedPlan(fixingFrom(withLateWorkDone(begun, stored.plan)?.yard ?? begun, stored, hours));
  const { plan, revision: madeFrom, now: madeFor } = stored;
  const current = {
    plan,
    yard: withKeep(file, keep),
    revision: madeFrom,
    now: madeFor,
    ...memoryOf(stored),
    cached,
  };
  shown.set(cached, current);
  return current;
};

const memoryOf = ({ memory }: StoredPlan): { memory?: PlanMemory } => (memory ? { memory: memory as PlanMemory } : {});

/** While a plan in which a session was planned anew is being improved, that session is not fixed. */
export const fixingFrom = (yard: YardFile, stored: StoredPlan | null, hours: number) => ({
  yard,
  hours,
  plan: stored?.plan ?? null,
  clock: minuteOf(yard.yard.now),
  anew: stored && !stored.improved ? stored.anew : null,
});

/** What is not to stay in the next plan as it stands in the present one. */
export interface Unfixed {
  /** Start of a session that is planned anew. */
  anew?: string;
  /** Mixes and pours that take the place of those planned now for the same sessions. */
  instead?: Keep;
  /** Late work that is on its list again. */
  lateBack?: readonly LateTaken[];
  /** Names of the steps of late work that were not done. */
  notDone?: readonly string[];
  /** The plan that stands again, in place of the one there is. */
  standAgain?: StoredPlan;
}

/** Orders whose date was given to the customer: promised, or held for him. */
export const givenOrders = (promised: ReadonlyMap<string, string | null>): string[] =>
  [...promised].flatMap(([order, day]) => (day === null ? [] : [order]));

/** A plan made anew, with what was fixed and could not stay. */
export interface RemadePlan extends CurrentPlan {
  dropped: StoredDrop[];
}

/** Planning starts from the plan that is there, and leaves as much of it as is worth as much. */
export const startingFrom = (stored: StoredPlan | null): { near?: PlanFile; memory?: PlanMemory } =>
  stored ? { near: stored.plan, ...memoryOf(stored) } : {};

/** A plan made anew, with what had to stay in it. */
interface Made {
  plan: PlanFile;
  memory: PlanMemory;
  fixed: FixedPlan;
}

/**
 * A plan that leaves late work as it was planned, so that it can still be written down; null where there is none, or no
 * plan has room for it.
 */
const madeRoundLate = async (
  begun: YardFile,
  before: StoredPlan | null,
  { lateBack = [], notDone }: Unfixed,
  make: (yard: YardFile) => Promise<Made>,
): Promise<Made | null> => {
  if (!before) return null;
  const written = withLateWorkDone(begun, lateBack.reduce<PlanOfWork>(withLateBack, before.plan), new Set(notDone));
  if (!written) return null;
  const made = await make(written.yard);
  const plan = written.putBack(made.plan);
  return plan && { ...made, plan };
};

/**
 * Plans the yard as it is now and stores the plan in place of the one before; what is fixed stays as it was planned, and
 * so does what may still be written down late. Data that no yard file may hold is a fault of the program.
 */
export const remakePlan = async (
  tx: Tx,
  { now, background }: Moment,
  stored: StoredPlan | null,
  unfixed: Unfixed = {},
): Promise<RemadePlan> => {
  const before = unfixed.standAgain ?? stored;
  const file = await loadYardFile(tx, now);
  const madeFrom = await revision(tx);
  // What was planned anew for this revision is fixed again from the next one on.
  const sameData = before?.revision === madeFrom;
  const begun = withBegunSetUps(asOf(file, now), before?.plan ?? null);
  const hours = await fixedHours(tx);
  const given = givenOrders(await promisedDays(tx));
  const anew = unfixed.anew ?? (sameData ? fixingFrom(begun, before, hours).anew : null);
  const make = async (from: YardFile): Promise<Made> => {
    const { instead } = unfixed;
    const fixed = fixedPlan({ ...fixingFrom(from, before, hours), anew, ...(instead ? { instead } : {}) });
    const yard = withKeep(from, fixed.keep);
    const standing = standingPours(
      { ...fixingFrom(from, before, hours), anew, ...(instead ? { instead } : {}) },
      fixed.keep,
    );
    await yieldThread();
    const stands = standing ? { standing, given } : {};
    const question = { yard, ...startingFrom(before), ...stands };
    return { fixed, ...(await computeForRequest(background, 'quick plan', question)) };
  };
  const late = await madeRoundLate(begun, before, unfixed, make);
  const { plan, memory, fixed } = late ?? (await make(begun));
  const { from, until } = goodMinutes(begun);
  const good = { goodFromMinute: from, goodUntilMinute: until };
  await yieldThread();
  // A longer search knows nothing of late work.
  const kept = { revision: madeFrom, madeAt: now, now, ...good, plan, memory, improved: late !== null, anew };
  const cached = { stored: await savePlan(tx, kept), file, hours };
  return { ...currentAt(cached, now), dropped: dropsOf(fixed, plan) };
};

/**
 * Stores what `carry` makes of the present plan as the plan of the data as it is now, with the instant it was made for and
 * the time it is good for as they were; null when there is no carrying on.
 */
export const carryPlanOn = async (
  tx: Tx,
  now: string,
  before: StoredPlan,
  carry: (plan: PlanFile) => PlanFile | null,
): Promise<RemadePlan | null> => {
  const plan = carry(before.plan);
  if (!plan) return null;
  const file = await loadYardFile(tx, now);
  const madeFrom = await revision(tx);
  // A longer search would begin anew what is half done.
  const stored = await savePlan(tx, { ...before, revision: madeFrom, plan, improved: true });
  const cached = { stored, file, hours: await fixedHours(tx) };
  return { plan, yard: asOf(file, now), revision: madeFrom, now: before.now, dropped: [], cached };
};
