import { type PlanFile, spellsOf } from '../../../shared/plan.ts';
import { isInstant, type Minute, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import { customersByOrder } from '../core/customers-by-order.ts';

/** From when to when a session goes on, in minutes since 1970. */
export interface SessionSpan {
  start: Minute;
  end: Minute;
}

/** To the end of the day on which a session begins, in case its hours become longer than they are. */
export const spanOf =
  (start: string) =>
  ({ yard }: Pick<YardFile, 'yard'>): SessionSpan => {
    const calendar = calendarOf(yard.timeZone);
    const from = isInstant(start) ? minuteOf(start) : minuteOf(yard.now);
    return { start: from, end: calendar.midnightOf(calendar.dayOf(from) + 1) };
  };

/** A step of a plan that another plan has not in the same session. */
export interface StepLeftOut {
  kind: 'pour' | 'strip' | 'pack';
  /** The mould, or whom the order is for. */
  what: string;
  /** When it was to begin. */
  at: string;
}

/** What another plan makes of one session. */
export interface SessionEffect {
  /** So many pieces more are poured in it; below nothing, so many fewer. */
  morePieces: number;
  /** What no longer fits, by its time. */
  leftOut: readonly StepLeftOut[];
}

const stepsOf = (plan: PlanFile, yard: Pick<YardFile, 'orders'>): StepLeftOut[] => {
  const customers = customersByOrder(yard);
  return [
    ...plan.pours.map(({ mould, fillStart }) => ({ kind: 'pour' as const, what: mould, at: fillStart })),
    ...[...plan.pours, ...plan.strips].map(({ mould, stripStart }) => ({
      ...{ kind: 'strip' as const, what: mould, at: stripStart },
    })),
    ...plan.orders.flatMap((order) =>
      spellsOf(order).map(({ packStart }) => ({
        ...{ kind: 'pack' as const, what: customers.get(order.id) ?? `order ${order.id}`, at: packStart },
      })),
    ),
  ];
};

const nameOf = ({ kind, what }: StepLeftOut): string => `${kind} ${what}`;

/** Those of the first for which the second has none of their own. */
const without = (steps: readonly StepLeftOut[], others: readonly StepLeftOut[]): StepLeftOut[] => {
  const left = others.map(nameOf);
  return steps.filter((step) => {
    const place = left.indexOf(nameOf(step));
    if (place >= 0) left.splice(place, 1);
    return place < 0;
  });
};

/** What becomes of a session from now on, by a plan that takes the place of another. */
export const sessionEffect = (
  before: PlanFile,
  after: PlanFile,
  { yard, span }: { yard: YardFile; span: SessionSpan },
): SessionEffect => {
  const now = minuteOf(yard.yard.now);
  const isIn = ({ at }: StepLeftOut) => minuteOf(at) >= Math.max(now, span.start) && minuteOf(at) < span.end;
  const [was, is] = [stepsOf(before, yard).filter(isIn), stepsOf(after, yard).filter(isIn)];
  const pours = (steps: readonly StepLeftOut[]) => steps.filter(({ kind }) => kind === 'pour').length;
  return {
    morePieces: pours(is) - pours(was),
    leftOut: without(was, is).sort((a, b) => minuteOf(a.at) - minuteOf(b.at)),
  };
};
