import type { Tx } from '../../../db/open.ts';
import { addChange, addNotice, dismissNoticesAfter } from '../../../db/stores/change-store.ts';
import type { StoredPlan } from '../../../db/stores/plan-store.ts';
import { unitsOfYard } from '../../../db/stores/units-store.ts';
import { dayWords } from '../../../shared/day-words.ts';
import { daysText } from '../../../shared/days-text.ts';
import type { PlanFile } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { today } from '../core/context.ts';
import { isSpoken, movedOnly, type PromiseMove, promisesMoved, promisesOf } from './promises-moved.ts';
import { reasonShown } from './reason-shown.ts';
import type { RemadePlan } from './remake-plan.ts';

/** What happened to the plan without anybody changing anything. */
export type RemakeKind = typeof TIME_PASSED | typeof BETTER_PLAN;
export const TIME_PASSED = 'time went by';
export const BETTER_PLAN = 'better plan found';

const whose = ({ customer, order }: PromiseMove): string => customer ?? `order ${order}`;

const lateWords = (days: number, isWanted: boolean): string =>
  `${daysText(days)} after the date ${isWanted ? 'wanted' : 'given'}`;

/** "School garden is ready Sat 15 May now, 7 days after the date given." */
const moveWords = (move: PromiseMove): string => {
  const { to, daysLate, isWanted, reason, kind } = move;
  if (to === null) return `${whose(move)} can't be made now${reason ? `, because ${reason}` : ''}.`;
  const standing = daysLate
    ? `, ${lateWords(daysLate, isWanted)}`
    : kind === 'spare'
      ? ', with no day left to spare'
      : ', in time';
  return `${whose(move)} is ready ${dayWords(to)} now${standing}.`;
};

/** Whether the plan before was made for a time that is still to come. */
const isPutBack = (before: StoredPlan, now: string): boolean => minuteOf(before.now) > minuteOf(now);

const eventWords = (kind: RemakeKind, before: StoredPlan, after: RemadePlan, now: string): string => {
  if (kind === BETTER_PLAN) return 'A better plan was found';
  const day = dayWords(today(after.yard.yard.timeZone, now));
  if (isPutBack(before, now)) return `The clock was put back to ${day}`;
  return before.revision === after.revision ? `A new day, ${day}` : 'The yard was loaded again';
};

/** Only orders that the plan knew: the others came since, and did not move. */
const known = (yard: YardFile, plan: PlanFile): YardFile => {
  const ids = new Set([...plan.orders.map(({ id }) => id), ...plan.unplanned.map(({ order }) => order)]);
  return { ...yard, orders: yard.orders.filter(({ id }) => ids.has(id)) };
};

/**
 * Writes down what a remake did that nobody asked for, if it moved a date or what was fixed, and leaves a notice for the
 * maker when a date given can no longer be kept, can be kept again, or has no day left to spare. What was told while the
 * clock was ahead is told no more once it is put back.
 */
export const recordRemake = async (
  tx: Tx,
  now: string,
  kind: RemakeKind,
  before: StoredPlan,
  after: RemadePlan,
): Promise<void> => {
  if (isPutBack(before, now)) await dismissNoticesAfter(tx, now);
  const [was, is] = [promisesOf(known(after.yard, before.plan), before.plan), promisesOf(after.yard, after.plan)];
  const moved = promisesMoved(was, is);
  const { dropped } = after;
  if (moved.length === 0 && dropped.length === 0) return;
  const words = eventWords(kind, before, after, now);
  const change = await addChange(tx, { at: now, kind, words, ...movedOnly(was, is), dropped });
  const system = await unitsOfYard(tx);
  const spoken = moved
    .filter(isSpoken)
    .map((move) => ({ ...move, reason: reasonShown(move.reason, after.yard.materials, system) }));
  if (spoken.length > 0)
    await addNotice(tx, { at: now, words: [`${words}.`, ...spoken.map(moveWords)].join(' '), change });
};
