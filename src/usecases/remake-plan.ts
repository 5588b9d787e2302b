import type { Tx } from '../../db/open.ts';
import { type StoredPlan, savePlan, storedPlan } from '../../db/stores/plan-store.ts';
import { fixedHours, loadYardFile, revision } from '../../db/stores/yard-store.ts';
import type { Keep, PlanFile } from '../../shared/plan.ts';
import { type Minute, minuteOf } from '../../shared/time.ts';
import { readYardFile, type YardFile } from '../../shared/yard-file.ts';
import { planWithMemory } from '../engine/plan.ts';
import type { PlanMemory } from '../engine/search/memory.ts';
import { calendarOf } from '../engine/work/calendar.ts';
import { sessionsOf } from '../engine/work/sessions.ts';
import { dropsOf, fixedPlan, type StoredDrop, withKeep } from './fixed-plan.ts';

export interface CurrentPlan {
  plan: PlanFile;
  /** The data it was made from, as of the present now, with what has to stay of the plan in `keep`. */
  yard: YardFile;
  revision: number;
  /** The instant it was made for. */
  now: string;
}

/**
 * The minutes between which a plan made at `now` is good: its own date, and no longer than to the end of the next
 * session that was still to come. A session under way does not end it: the day's work is recorded against that plan.
 */
export const goodMinutes = (yard: YardFile): { from: Minute; until: Minute } => {
  const calendar = calendarOf(yard.yard.timeZone);
  const now = minuteOf(yard.yard.now);
  const day = calendar.dayOf(now);
  const soon = sessionsOf({ ...yard, yard: { ...yard.yard, horizonDays: 1 } }, calendar);
  const ends = soon.filter(({ start }) => start > now).map(({ end }) => end);
  return { from: calendar.midnightOf(day), until: Math.min(calendar.midnightOf(day + 1), ...ends) };
};

const isGood = (stored: StoredPlan, revisionNow: number, now: string): boolean => {
  const minute = minuteOf(now);
  return stored.revision === revisionNow && minute >= stored.goodFromMinute && minute < stored.goodUntilMinute;
};

/** The stored plan, unless something it depends on has changed or its time has passed. */
export const goodPlan = async (tx: Tx, now: string): Promise<CurrentPlan | null> => {
  const stored = await storedPlan(tx);
  if (!stored || !isGood(stored, await revision(tx), now)) return null;
  const yard = await loadYardFile(tx, now);
  const { keep } = fixedPlan(fixingFrom(yard, stored, await fixedHours(tx)));
  return { plan: stored.plan, yard: withKeep(yard, keep), revision: stored.revision, now: stored.now };
};

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
}

/** A plan made anew, with what was fixed and could not stay. */
export interface RemadePlan extends CurrentPlan {
  dropped: StoredDrop[];
}

/** Planning starts from the plan that is there, and leaves as much of it as is worth as much. */
export const startingFrom = (stored: StoredPlan | null): { near?: PlanFile; memory?: PlanMemory } =>
  stored ? { near: stored.plan, ...(stored.memory ? { memory: stored.memory as PlanMemory } : {}) } : {};

const checked = (file: YardFile): YardFile => {
  const read = readYardFile(file);
  if (read.ok) return read.yard;
  throw new Error(`The stored yard has faults: ${read.faults.map((f) => `${f.path} ${f.message}`).join('; ')}`);
};

/**
 * Plans the yard as it is now and stores the plan; what is fixed stays as it was planned. Data that no yard file may hold
 * is a fault of the program.
 */
export const remakePlan = async (tx: Tx, now: string, unfixed: Unfixed = {}): Promise<RemadePlan> => {
  const before = await storedPlan(tx);
  const file = await loadYardFile(tx, now);
  const madeFrom = await revision(tx);
  // What was planned anew for this revision is fixed again from the next one on.
  const sameData = before?.revision === madeFrom;
  const fixing = fixingFrom(file, before, await fixedHours(tx));
  const anew = unfixed.anew ?? (sameData ? fixing.anew : null);
  const fixed = fixedPlan({ ...fixing, anew, ...(unfixed.instead ? { instead: unfixed.instead } : {}) });
  const yard = checked(withKeep(file, fixed.keep));
  const { plan, memory } = planWithMemory(yard, { effort: 'quick', ...startingFrom(before) });
  const { from, until } = goodMinutes(yard);
  const good = { goodFromMinute: from, goodUntilMinute: until };
  await savePlan(tx, { revision: madeFrom, madeAt: now, now, ...good, plan, memory, improved: false, anew });
  return { plan, yard, revision: madeFrom, now, dropped: dropsOf(fixed, plan) };
};
