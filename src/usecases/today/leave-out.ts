import { updateOrder } from '../../../db/stores/order-store.ts';
import type { StoredPlan } from '../../../db/stores/plan-store.ts';
import type { Tx } from '../../../db/transaction.ts';
import { dayWords } from '../../../shared/day-words.ts';
import type { PlanFile } from '../../../shared/plan.ts';
import { dateOfDay, type Minute, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { coatsBefore } from '../../engine/book/coat-before.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import type { Session } from '../../engine/calendar/sessions.ts';
import { lessPours } from '../../engine/standing/less-pours.ts';
import { done, type Outcome, refuse, type UseCaseContext } from '../core/context.ts';
import { customersByOrder } from '../core/customers-by-order.ts';
import { mixesOf } from '../plan/fixed-plan.ts';
import { planForNow } from '../plan/make-plan.ts';
import type { Edit, LeftForLater } from '../plan/save-edit.ts';
import { type SessionSpan, spanOf } from '../plan/session-effect.ts';
import type { FormFields } from '../typed/form-fields.ts';
import { sessionChosen } from './session-chosen.ts';

/** The batches of a plan that begin in a session, and have not begun yet. */
const mixesToCome = (plan: PlanFile, { start, end }: SessionSpan, now: Minute) =>
  mixesOf(
    plan,
    (batch) => minuteOf(batch.start) > now && minuteOf(batch.start) >= start && minuteOf(batch.start) < end,
  );

/** The orders for which something is still to be poured in a session, those with the most pieces first. */
export const poursLeft = (yard: YardFile, plan: PlanFile, span: SessionSpan): LeftForLater[] => {
  const counts = new Map<string, number>();
  for (const { pours } of mixesToCome(plan, span, minuteOf(yard.yard.now)))
    for (const { order } of pours) if (order !== undefined) counts.set(order, (counts.get(order) ?? 0) + 1);
  const customers = customersByOrder(yard);
  return [...counts]
    .flatMap(([order, pieces]) => {
      const customer = customers.get(order);
      return customer === undefined ? [] : [{ order, customer, pieces }];
    })
    .sort((a, b) => b.pieces - a.pieces);
};

/** A plan less what is still to be poured for an order in a session: batches are the smaller for it, or gone. */
const withoutPours = (plan: PlanFile, yard: YardFile, span: SessionSpan, order: string): PlanFile => {
  const { instantText } = calendarOf(yard.yard.timeZone);
  const mixes = mixesToCome(plan, span, minuteOf(yard.yard.now));
  const touched = new Set(mixes.map(({ batch }) => batch.id));
  const left = mixes.flatMap((mix) => {
    const gone = new Set(mix.pours.filter((pour) => pour.order === order));
    if (gone.size === mix.pours.length) return [];
    return [gone.size === 0 ? mix : lessPours(mix, gone, instantText)];
  });
  const pours = [...plan.pours.filter(({ batch }) => !touched.has(batch)), ...left.flatMap((mix) => mix.pours)];
  return {
    ...plan,
    batches: [...plan.batches.filter(({ id }) => !touched.has(id)), ...left.map(({ batch }) => batch)],
    pours,
    coats: coatsBefore(plan.coats, pours, pours),
  };
};

/** What is left out of a session, with the plan that stands once it is. */
export interface LeftOut {
  words: string;
  stands: StoredPlan;
}

/**
 * Nothing more is poured for an order before the day after a session; the plan that stands has none of it. Refused at `without`
 * where nothing is to be poured for it there.
 */
export const leaveOut = async (
  tx: Tx,
  context: UseCaseContext,
  { yard, plan, session }: { yard: YardFile; plan: PlanFile; session: Session },
  order: string,
): Promise<Outcome<LeftOut>> => {
  const left = poursLeft(yard, plan, session).find((one) => one.order === order);
  if (!left) return refuse('without', 'Nothing more is to be poured for that order then. Nothing was changed.');
  await updateOrder(tx, order, { notBefore: dateOfDay(session.day + 1) });
  const { stored } = (await planForNow(tx, context)).cached;
  return done({
    words: `nothing more is poured for ${left.customer} on ${dayWords(dateOfDay(session.day))}`,
    stands: { ...stored, plan: withoutPours(plan, yard, session, order) },
  });
};

/** What is left to be poured for an order in a session is left for another day; shown first, whatever it moves. */
export const leaveForAnotherDay = (
  context: UseCaseContext,
  { session: start = '', without = '' }: FormFields,
): Edit<LeftOut> => ({
  what: { kind: 'left for another day', words: ({ words }) => `${words[0]?.toUpperCase()}${words.slice(1)}` },
  session: spanOf(start),
  work: async (tx, yard, _change, plan) => {
    const chosen = sessionChosen(yard, start, minuteOf(context.now));
    return chosen.ok ? leaveOut(tx, context, { yard, plan, session: chosen.value }, without) : chosen;
  },
  replanning: { unfixed: ({ stands }) => ({ standAgain: stands }) },
});
