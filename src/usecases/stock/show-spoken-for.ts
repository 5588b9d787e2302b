import { dateOfDay, minuteOf } from '../../../shared/time.ts';
import { type CourseStep, stockCourse } from '../../engine/buy/stock-course.ts';
import { onItsWay } from '../../engine/buy/there-at.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import { shownUnit } from '../../engine/units/material-unit.ts';
import { bagsFacts, pastDate } from '../buying/bags-facts.ts';
import { materialUsesYielding } from '../buying/material-uses.ts';
import { type StockCounted, stockFacts, stockShown } from '../buying/stock-facts.ts';
import { today, type UseCaseContext } from '../core/context.ts';
import { customersByOrder } from '../core/customers-by-order.ts';
import type { PageHead } from '../core/page-parts.ts';
import { currentPlan } from '../plan/make-plan.ts';
import { showMeasures } from '../typed/measures.ts';

/** Steps shown: a plan of a year takes a thousand times from the stock. */
const MOST = 200;

/** One step of a material's way, in the unit that is shown. */
export interface SpokenStep {
  kind: CourseStep['kind'];
  on: string;
  quantity: number;
  /** Whom it is for; null: stock. */
  orders: readonly { order: string; customer: string }[];
  forStock: boolean;
  /** The dates on the bags; those of no known date are not in it. */
  bagDates: readonly string[];
  left: number;
  short: number;
}

/** What a material is planned for, and how long what is there and on its way will do. */
export interface SpokenForModel extends PageHead, StockCounted {
  material: string;
  name: string;
  unit: string;
  steps: readonly SpokenStep[];
  /** There are more steps than are shown. */
  isCut: boolean;
  /** The day on which it runs short if nothing is bought; null where it does not. */
  shortOn: string | null;
}

/** How a material goes on by the plan, with nothing bought that is not on its way; null where there is no such material. */
export const showSpokenFor = async (context: UseCaseContext, id: string): Promise<SpokenForModel | null> => {
  const { yard, plan } = await currentPlan(context);
  const material = yard.materials.find((one) => one.id === id);
  if (!material) return null;
  const uses = (await materialUsesYielding(yard, plan)).get(id) ?? [];
  const { system } = await showMeasures(context);
  const { word, perUnit } = shownUnit(material.unit, system);
  const calendar = calendarOf(yard.yard.timeZone);
  const day = today(yard.yard.timeZone, context.now);
  const clock = { now: minuteOf(context.now), calendar, deliveredBy: yard.yard.deliveredBy };
  const course = stockCourse(material, uses, onItsWay(yard, id), clock);
  const past = pastDate(bagsFacts(material, yard, day));
  const counted = stockFacts(material, uses, past, clock);
  const customers = customersByOrder(yard);
  const shown = (step: CourseStep): SpokenStep => ({
    ...{ kind: step.kind, on: dateOfDay(step.day), quantity: step.quantity * perUnit },
    ...{ left: step.left * perUnit, short: step.short * perUnit, forStock: step.orders.includes(null) },
    orders: step.orders.flatMap((order) =>
      order === null ? [] : [{ order, customer: customers.get(order) ?? `order ${order}` }],
    ),
    bagDates: step.bagDates.flatMap((one) => (one === null ? [] : [dateOfDay(one)])),
  });
  const short = course.find((step) => step.short > 0);
  return {
    ...{ yardName: yard.yard.name, today: day, material: id, name: material.name, unit: word },
    ...stockShown(counted, perUnit),
    ...{ steps: course.slice(0, MOST).map(shown), isCut: course.length > MOST },
    shortOn: short ? dateOfDay(short.day) : null,
  };
};
