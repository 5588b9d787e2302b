import { type PlanFile, spellsOf } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import { type Session, sessionsOf } from '../../engine/calendar/sessions.ts';
import { customersByOrder } from '../core/customers-by-order.ts';
import { fixedIn } from '../plan/fixed-plan.ts';
import { beginsWithin } from '../plan/plan-starts.ts';
import { poursWithin } from '../plan/pour-minutes.ts';

const during =
  ({ start, end }: Session) =>
  (instant: string | undefined): boolean => {
    const minute = instant === undefined ? Number.NaN : minuteOf(instant);
    return minute >= start && minute < end;
  };

/** A spell of work, half-open. */
export interface WorkAhead {
  kind: 'mix' | 'set up' | 'strip' | 'pack';
  start: string;
  end: string;
}

/** The next session in the names of the yard. */
export interface NextSession {
  /** All that is done in it, by when it begins. */
  work: readonly WorkAhead[];
  /** All of it stays as it is planned. */
  fixed: boolean;
  date: string;
  start: string;
  end: string;
  bags: readonly { mix: string; count: number }[];
  /** Moulds that are filled, and those that are stripped. */
  pours: readonly string[];
  strips: readonly string[];
  /** Customers whose orders are packed. */
  packs: readonly string[];
}

const workWithin = (plan: PlanFile, inIt: (instant: string | undefined) => boolean): WorkAhead[] => {
  const { batches, coats, pours, strips, orders } = plan;
  const work: WorkAhead[] = [
    ...batches.map(({ start, end }) => ({ kind: 'mix' as const, start, end })),
    ...coats.map(({ start, end }) => ({ kind: 'set up' as const, start, end })),
    ...pours.map(({ prepStart, prepEnd }) => ({ kind: 'set up' as const, start: prepStart, end: prepEnd })),
    ...[...strips, ...pours].map(({ stripStart, stripEnd }) => ({
      ...{ kind: 'strip' as const, start: stripStart, end: stripEnd },
    })),
    ...orders.flatMap((order) =>
      spellsOf(order).map(({ packStart, packEnd }) => ({ kind: 'pack' as const, start: packStart, end: packEnd })),
    ),
  ];
  return work
    .filter(({ start, end }) => inIt(start) && start !== end)
    .sort((a, b) => minuteOf(a.start) - minuteOf(b.start));
};

/** What the plan has for the first session with anything in it; null when it has nothing. */
export const nextSession = (plan: PlanFile, yard: YardFile): NextSession | null => {
  const calendar = calendarOf(yard.yard.timeZone);
  const session = sessionsOf(yard, calendar).find((one) => beginsWithin(plan, one));
  if (!session) return null;
  const inIt = during(session);
  const bags = new Map<string, number>();
  for (const batch of plan.batches.filter(({ start }) => inIt(start)))
    bags.set(batch.mix, (bags.get(batch.mix) ?? 0) + batch.bags);
  const customers = customersByOrder(yard);
  return {
    fixed: fixedIn(yard, session).batches.length > 0,
    date: calendar.instantText(session.start).slice(0, 10),
    start: calendar.instantText(session.start),
    end: calendar.instantText(session.end),
    bags: [...bags].map(([mix, count]) => ({ mix: yard.mixes.find(({ id }) => id === mix)?.name ?? mix, count })),
    pours: poursWithin(plan, 'fillStart', session).map(({ mould }) => mould),
    strips: [
      ...plan.strips.filter(({ stripStart }) => inIt(stripStart)),
      ...poursWithin(plan, 'stripStart', session),
    ].map(({ mould }) => mould),
    work: workWithin(plan, inIt),
    packs: plan.orders
      .filter((order) => spellsOf(order).some(({ packStart }) => inIt(packStart)))
      .map(({ id }) => customers.get(id) ?? `order ${id}`),
  };
};
