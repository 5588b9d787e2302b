import type { Tx } from '../../db/open.ts';
import { type StoredPlan, savePlan, storedPlan } from '../../db/stores/plan-store.ts';
import { loadYardFile, revision } from '../../db/stores/yard-store.ts';
import type { PlanFile } from '../../shared/plan.ts';
import { type Minute, minuteOf } from '../../shared/time.ts';
import { readYardFile, type YardFile } from '../../shared/yard-file.ts';
import { planYard } from '../engine/plan.ts';
import { calendarOf } from '../engine/work/calendar.ts';
import { sessionsOf } from '../engine/work/sessions.ts';

export interface CurrentPlan {
  plan: PlanFile;
  /** The data it was made from, as of the present now. */
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
  return { plan: stored.plan, yard: await loadYardFile(tx, now), revision: stored.revision, now: stored.now };
};

/** Plans the yard as it is now and stores the plan. Data that no yard file may hold is a fault of the program. */
export const remakePlan = async (tx: Tx, now: string): Promise<CurrentPlan> => {
  const read = readYardFile(await loadYardFile(tx, now));
  if (!read.ok)
    throw new Error(`The stored yard has faults: ${read.faults.map((f) => `${f.path} ${f.message}`).join('; ')}`);
  const { yard } = read;
  const plan = planYard(yard, { effort: 'quick' });
  const madeFrom = await revision(tx);
  const { from, until } = goodMinutes(yard);
  await savePlan(tx, { revision: madeFrom, madeAt: now, now, goodFromMinute: from, goodUntilMinute: until, plan });
  return { plan, yard, revision: madeFrom, now };
};
