import type { Order } from '../../shared/order.ts';
import type { Keep, PlanFile } from '../../shared/plan.ts';
import { dateOfDay, dayNumber, minuteOf } from '../../shared/time.ts';
import type { YardFile } from '../../shared/yard-file.ts';
import { calendarOf } from '../../src/engine/calendar/calendar.ts';
import { planYard } from '../../src/engine/plan.ts';
import { keepOfPlan } from '../../src/engine/standing/keep-of-plan.ts';
import { lessPours } from '../../src/engine/standing/less-pours.ts';

/** An order that is asked about beside the plan of a yard. */
export interface Beside {
  yard: YardFile;
  order: Order;
  plan: PlanFile;
}

/** Orders tried elsewhere, at most: those that are ready first. */
const MOST_MOVED = 6;

const soonest = (days: readonly (string | null)[]): string | null =>
  days.filter((day) => day !== null).sort()[0] ?? null;

/** The day of the order in a quick plan of the yard with it; null where somebody is later in that than in the plan there is. */
const dayIn = ({ yard, order, plan }: Beside, due: string | undefined, keep?: Keep): string | null => {
  const asking = { ...order, due, wanted: undefined };
  const after = planYard({ ...yard, orders: [...yard.orders, asking], ...(keep && { keep }) }, { effort: 'quick' });
  const planned = new Map(after.orders.map((one) => [one.id, one]));
  const holds = plan.orders.every(({ id, daysLate }) => (planned.get(id)?.daysLate ?? Infinity) <= daysLate);
  return holds ? (planned.get(order.id)?.completesOn ?? null) : null;
};

/** With every task of the plan kept, and the order where it still fits. */
export const keptWhole = (beside: Beside): string | null => dayIn(beside, undefined, keepOfPlan(beside.plan));

/** All of a plan but what is done for one order. */
const keptBut = ({ yard, plan }: Beside, id: string): Keep => {
  const keep = keepOfPlan(plan);
  const { instantText } = calendarOf(yard.yard.timeZone);
  const left = keep.batches.flatMap((batch) => {
    const pours = keep.pours.filter((pour) => pour.batch === batch.id);
    pours.sort((a, b) => minuteOf(a.fillStart) - minuteOf(b.fillStart));
    const gone = new Set(pours.filter((pour) => pour.order === id));
    if (gone.size === pours.length) return [];
    return [gone.size === 0 ? { batch, pours } : lessPours({ batch, pours }, gone, instantText)];
  });
  const stays = new Set(left.flatMap(({ pours }) => pours.map((pour) => pour.id)));
  return {
    batches: left.map(({ batch }) => batch),
    pours: left.flatMap(({ pours }) => pours),
    strips: keep.strips?.filter(({ pour }) => pour === undefined || stays.has(pour)) ?? [],
    packs: keep.packs?.filter(({ order }) => order !== id) ?? [],
  };
};

/** With all kept but what is done for one other order, which is moved as far as its date allows; each in turn. */
export const oneMoved = (beside: Beside, told: string | null): string | null => {
  const { yard, plan } = beside;
  const before = told === null ? undefined : dateOfDay(dayNumber(told) - 1);
  const first = [...plan.orders].sort((a, b) => a.completesAt.localeCompare(b.completesAt)).slice(0, MOST_MOVED);
  const days = first.map(({ id, daysLate }) => {
    const orders = yard.orders.map((one) =>
      one.id === id && one.due !== undefined ? { ...one, due: dateOfDay(dayNumber(one.due) + daysLate) } : one,
    );
    const moved = { ...yard, orders };
    const limits = plan.orders.map((one) => (one.id === id ? { ...one, daysLate: 0 } : one));
    return dayIn({ ...beside, yard: moved, plan: { ...plan, orders: limits } }, before, keptBut(beside, id));
  });
  return soonest(days);
};

/** In plans from nothing, the order due on each of these days, or with none. */
export const fromNothing = (beside: Beside, dues: readonly (string | undefined)[]): string | null =>
  soonest(dues.map((due) => dayIn(beside, due)));
