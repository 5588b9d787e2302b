import type { Database } from '../../../db/open.ts';
import type { Keep } from '../../../shared/plan.ts';
import type { YardRecord } from '../../../shared/yard-record.ts';
import { todayIn } from '../../engine/book/today-in.ts';
import type { UseCaseContext } from '../core/context.ts';
import { asWorked } from './as-worked.ts';
import { fixedPlan, withKeep } from './fixed-plan.ts';
import { type CurrentPlan, currentPlan } from './make-plan.ts';
import { fixingFrom } from './remake-plan.ts';
import { sameQuestions } from './same-questions.ts';
import { standingPours } from './standing-pours.ts';
import { yardRecord } from './yard-record.ts';

/** The plan that stands, as questions are asked beside it. */
export interface PlanToAsk extends CurrentPlan {
  /** All of it that can still be: an answer is never later than with all of that kept. */
  standing?: Keep;
  /** The same object for as long as every question beside this plan has the answer that it had. */
  since: { now: string };
  yard: CurrentPlan['yard'] & { record: YardRecord };
}

interface AskedLast {
  current: CurrentPlan;
  toAsk: PlanToAsk;
}

/** What questions were asked of last: worked out once a minute, however many ask. */
const last = new WeakMap<Database, AskedLast>();

const isSamePlan = (one: CurrentPlan, other: CurrentPlan): boolean =>
  one.cached.stored.number === other.cached.stored.number &&
  one.cached.stored.revision === other.cached.stored.revision;

/** Of one plan's data and a day, with all that was recorded until then; whatever is stored, data are read anew. */
const records = new WeakMap<CurrentPlan['cached'], { day: string; record: Promise<YardRecord> }>();

/** What went wrong so far, read again only where something was stored since, or on another day. Who asks meanwhile waits for the same. */
const recordFor = ({ database }: UseCaseContext, { cached, yard }: CurrentPlan): Promise<YardRecord> => {
  const day = todayIn(yard);
  const known = records.get(cached);
  if (known?.day === day) return known.record;
  const record = database.read((tx) => yardRecord(tx, yard));
  const entry = { day, record };
  records.set(cached, entry);
  record.catch(() => records.get(cached) === entry && records.delete(cached));
  return record;
};

const asked = (current: CurrentPlan, record: YardRecord): Omit<PlanToAsk, 'since'> => {
  const { cached } = current;
  const { yard } = asWorked(current.yard, cached.stored);
  const fixing = fixingFrom(yard, cached.stored, cached.hours);
  const { keep } = fixedPlan(fixing);
  const standing = standingPours(fixing, keep);
  return { ...current, yard: { ...withKeep(yard, keep), record }, ...(standing ? { standing } : {}) };
};

/** The plan that holds now, with the yard that questions beside it are asked of: it counts on late work as the plan does, and knows what went wrong so far. */
export const planToAsk = async (context: UseCaseContext): Promise<PlanToAsk> => {
  const current = await currentPlan(context);
  const record = await recordFor(context, current);
  const before = last.get(context.database);
  if (before?.current === current) return before.toAsk;
  const fresh = asked(current, record);
  const isSame = before && isSamePlan(before.current, current) && sameQuestions(before.toAsk, fresh);
  const toAsk = { ...fresh, since: isSame ? before.toAsk.since : { now: current.yard.yard.now } };
  last.set(context.database, { current, toAsk });
  return toAsk;
};
