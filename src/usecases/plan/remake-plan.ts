import type { Tx } from '../../../db/open.ts';
import { promisedDays } from '../../../db/stores/order-store.ts';
import { type StoredPlan, savePlan } from '../../../db/stores/plan-store.ts';
import { fixedHours, loadYardFile, revision } from '../../../db/stores/yard-store.ts';
import type { LateTaken, PlanOfWork } from '../../../shared/late-work.ts';
import type { Keep, PlanFile } from '../../../shared/plan.ts';
import { type Minute, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import type { YardRecord } from '../../../shared/yard-record.ts';
import { asOf } from '../../engine/book/as-of.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import type { FoundLonger } from '../../engine/quote/longer.ts';
import type { PlanMemory } from '../../engine/search/memory.ts';
import { type Computations, computeWithoutThread } from '../core/computations.ts';
import { computeForRequest, type Moment } from '../core/compute-for-request.ts';
import { yieldThread } from '../core/yield-thread.ts';
import { asWorked } from './as-worked.ts';
import { type CachedPlan, cachedPlan, fileAt } from './cached-plan.ts';
import { dropsOf, type Fixing, fixedMixes, fixedPlan, type StoredDrop, withKeep } from './fixed-plan.ts';
import { foundForNew } from './kept-answers.ts';
import { isNoWorse } from './kept-later.ts';
import { type BehindOrders, behindOrders, enoughRecordOf } from './kept-ready.ts';
import { NO_WORK, workOfPlan } from './late-work.ts';
import { withLateBack } from './late-work-back.ts';
import type { LateWorkDone } from './late-work-done.ts';
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

/** The minutes between which a plan made at `now` is good: its own date. */
const goodMinutes = (yard: YardFile): { from: Minute; until: Minute } => {
  const calendar = calendarOf(yard.yard.timeZone);
  const day = calendar.dayOf(minuteOf(yard.yard.now));
  return { from: calendar.midnightOf(day), until: calendar.midnightOf(day + 1) };
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

/** A cached plan as of an instant, and in its data the mixes that have to stay of the plan from then on. */
const currentAt = (cached: CachedPlan, now: string): CurrentPlan => {
  const before = shown.get(cached);
  if (before?.yard.yard.now === now) return before;
  const { stored, hours } = cached;
  const file = fileAt(cached, now);
  const { keep } = fixedMixes(fixingFrom(asWorked(file, stored).yard, stored, hours));
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

/**
 * What is fixed of a plan. While it is being improved, a session is not that was planned anew in it, nor one that no plan
 * had fixed before that a longer search had been through: a plan made in a hurry is nothing to hold on to.
 */
export const fixingFrom = (yard: YardFile, stored: StoredPlan | null, hours: number) => ({
  yard,
  hours,
  plan: stored?.plan ?? null,
  clock: minuteOf(yard.yard.now),
  anew: stored && !stored.improved ? stored.anew : null,
  searchedUntil: stored && !stored.improved ? (stored.searchedUntilMinute ?? 0) : Number.POSITIVE_INFINITY,
});

/**
 * The minute up to which sessions of the next plan were fixed in one that was searched; where nothing searches, all are for
 * as long as it is good.
 */
const searchedUntil = (
  { now, background }: Moment,
  before: StoredPlan | null,
  { hours, goodUntilMinute }: { hours: number; goodUntilMinute: Minute },
): StoredPlan['searchedUntilMinute'] => {
  if (!background) return goodUntilMinute + hours * 60;
  return before?.improved ? minuteOf(now) + hours * 60 : (before?.searchedUntilMinute ?? null);
};

/** What is not to stay in the next plan as it stands in the present one. */
export interface Unfixed {
  /** Start of a session that is planned anew. */
  anew?: string;
  /** Mixes and pours that take the place of those planned now for the same sessions. */
  instead?: Keep;
  /** The work that there is to do, with what is still to be answered; without it, that of the plan that stands. */
  work?: PlanOfWork;
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

/** All that the plan after a change is made from, so that it can be made once the transaction is over. */
export interface Remaking {
  now: string;
  /** The plan that stands. */
  before: StoredPlan | null;
  file: YardFile;
  /** The revision of it. */
  madeFrom: number;
  worked: LateWorkDone;
  hours: number;
  /** Orders with a date that was given. */
  given: string[];
  behind: BehindOrders;
  /** What went wrong so far, where dates are promised by it. */
  record: YardRecord | null;
  anew: string | null;
  fixing: Fixing;
  longer: FoundLonger | undefined;
}

/** Reads what a plan is made from, of the yard as it is now. */
export const readForRemake = async (
  tx: Tx,
  { database, now }: Moment,
  stored: StoredPlan | null,
  unfixed: Unfixed = {},
): Promise<Remaking> => {
  const before = unfixed.standAgain ?? stored;
  const file = await loadYardFile(tx, now);
  const madeFrom = await revision(tx);
  // What was planned anew for this revision is fixed again from the next one on.
  const sameData = before?.revision === madeFrom;
  const { lateBack = [], notDone, instead } = unfixed;
  const work = lateBack.reduce(withLateBack, unfixed.work ?? (before ? workOfPlan(before) : NO_WORK));
  const worked = asWorked(asOf(file, now), before, work, notDone);
  const hours = await fixedHours(tx);
  const given = givenOrders(await promisedDays(tx));
  const record = await enoughRecordOf(tx, file);
  const behind = await behindOrders(tx, record ? { ...file, record } : file);
  const anew = unfixed.anew ?? (sameData ? fixingFrom(worked.yard, before, hours).anew : null);
  const fixing = { ...fixingFrom(worked.yard, before, hours), anew, ...(instead ? { instead } : {}) };
  const longer = foundForNew(database, worked.yard.orders, startingFrom(before).memory);
  return { now, before, file, madeFrom, worked, hours, given, behind, record, anew, fixing, longer };
};

type QuickPlan = Computations['quick plan'];
/** Answers with null when it was given up. */
type PlanQuickly = (question: QuickPlan['question']) => Promise<QuickPlan['answer'] | null>;

/** The plan that a remake comes to; null where it was given up. */
const planned = async (
  { before, worked, given, behind, record, fixing, longer }: Remaking,
  planQuickly: PlanQuickly,
) => {
  const plannedOn = async (from: Fixing) => {
    const fixed = fixedPlan(from);
    const standing = standingPours(from, fixed.keep);
    await yieldThread();
    const stands = standing ? { standing, given } : {};
    const yard = { ...withKeep(worked.yard, fixed.keep), ...(record && { record }) };
    const kept = { yard, ...startingFrom(before), ...stands, ...behind };
    const question = { ...kept, ...(longer ? { longer } : {}) };
    const answer = await planQuickly(question);
    return answer && { fixed, ...answer };
  };
  const first = await plannedOn(fixing);
  const asItWas = before && first?.fixed.isLater ? await plannedOn({ ...fixing, asItWas: true }) : first;
  if (!first || !asItWas) return null;
  const isKept = !before || isNoWorse(first, asItWas, { near: before.plan, yard: worked.yard, given });
  const { fixed, plan: made, memory } = isKept ? first : asItWas;
  return { fixed, made, memory, ...worked.putBack(told(made)) };
};

/** The plan that a remake would come to, and its yard, in the thread of questions; nothing is stored. Null where it was given up. */
export const planApart = async (
  { background }: Moment,
  remaking: Remaking,
): Promise<Pick<CurrentPlan, 'plan' | 'yard'> | null> => {
  const compute = background?.compute ?? computeWithoutThread;
  const made = await planned(remaking, (question) => compute('quick plan', question));
  return made && { plan: made.plan, yard: asOf(remaking.file, remaking.now) };
};

/**
 * Plans the yard as it is now and stores the plan in place of the one before; what is fixed stays as it was planned, and so does what is under way, or over and not recorded yet. Data that no yard file may hold is a fault of the program.
 */
export const remakePlan = async (
  tx: Tx,
  moment: Moment,
  stored: StoredPlan | null,
  unfixed: Unfixed = {},
): Promise<RemadePlan> => {
  const { now, background } = moment;
  const remaking = await readForRemake(tx, moment, stored, unfixed);
  const { before, file, madeFrom, worked, hours, anew } = remaking;
  // What its thread gives up is worked out on the spot: a change never goes without its plan.
  const { fixed, made, memory, plan, aside } = (await planned(remaking, (question) =>
    computeForRequest(background, 'quick plan', question),
  ))!;
  const { from, until } = goodMinutes(worked.yard);
  const good = { goodFromMinute: from, goodUntilMinute: until };
  await yieldThread();
  const kept = {
    revision: madeFrom,
    madeAt: now,
    now,
    ...good,
    plan,
    unanswered: aside,
    memory,
    improved: false,
    anew,
    searchedUntilMinute: searchedUntil(moment, before, { hours, ...good }),
  };
  const cached = { stored: await savePlan(tx, kept), file, hours };
  return { ...currentAt(cached, now), dropped: dropsOf(fixed, made) };
};

/** What could not stay is told with the change; from then on what is fixed is what the plan has. */
export const told = (plan: PlanFile): PlanFile => ({ ...plan, dropped: [] });

/**
 * Stores what `carry` makes of the present plan as the plan of the data as it is now, with the instant it was made for and
 * the time it is good for as they were; null when there is no carrying on. `unanswered` is what has no place in it.
 */
export const carryPlanOn = async (
  tx: Tx,
  now: string,
  before: StoredPlan,
  carry: (plan: PlanFile) => PlanFile | null,
  unanswered: PlanOfWork | null,
): Promise<RemadePlan | null> => {
  const plan = carry(before.plan);
  if (!plan) return null;
  const file = await loadYardFile(tx, now);
  const madeFrom = await revision(tx);
  // What was done as planned gives a longer search nothing to gain, once one has been through the plan.
  const stored = await savePlan(tx, { ...before, revision: madeFrom, plan, unanswered });
  const cached = { stored, file, hours: await fixedHours(tx) };
  return { plan, yard: asOf(file, now), revision: madeFrom, now: before.now, dropped: [], cached };
};
