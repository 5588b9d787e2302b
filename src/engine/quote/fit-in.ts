import type { Order } from '../../../shared/order.ts';
import type { Keep, PlanFile } from '../../../shared/plan.ts';
import { dayNumber } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { compile, keeping } from '../decoder/compile.ts';
import { memoryOf, type PlanMemory } from '../search/memory.ts';
import type { Answer } from './answer.ts';
import { carefulOf } from './careful.ts';
import type { Earliest } from './completes-under.ts';
import { earliestOf, type Longer } from './earliest.ts';
import { type FoundLonger, longerIn } from './longer.ts';
import { askingIn, dealtAs, measuredBy, presentIn } from './present.ts';
import { handoverOn } from './promise.ts';
import { MOST_PLACES } from './quote.ts';

/** A yard without an order, and that order; what is set aside for it is anybody's. */
export interface WithoutAdded {
  without: YardFile;
  order: Order;
}

/** The yard without the one order that a memory does not know; null where there is none, or more than one. */
export const withoutAdded = (yard: YardFile, memory: PlanMemory): WithoutAdded | null => {
  const known = new Set(memory.sequence);
  const added = yard.orders.filter((o) => !known.has(o.id));
  if (added.length !== 1) return null;
  const order = added[0]!;
  const free = <T extends { order?: string }>(x: T): T => (x.order === order.id ? { ...x, order: undefined } : x);
  const without: YardFile = {
    ...yard,
    orders: yard.orders.filter((o) => o !== order),
    finished: yard.finished.map(free),
    inMould: yard.inMould.map(free),
    keep: yard.keep && { ...yard.keep, pours: yard.keep.pours.map(free) },
  };
  return { without, order };
};

/** For an order that was given a date a plan that leaves the others what they have in hand, where its date is kept by it. */
const asPromised = (
  { due }: Order,
  answer: Answer,
  longer: Longer | undefined,
): { earliest: Earliest; isCareful: boolean } => {
  const { asking, earliest } = answer;
  if (due === undefined) return { earliest, isCareful: true };
  const careful = carefulOf(answer, longer);
  const isKept = careful !== null && handoverOn(asking.problem, careful.completesAt) <= dayNumber(due);
  return isKept ? { earliest: careful, isCareful: true } : { earliest, isCareful: false };
};

/** How an order was fitted in, and whether the others keep what they have in hand. */
interface Fitted {
  memory: PlanMemory;
  isCareful: boolean;
}

/** As `fitIn`, and whether the others keep what they have in hand before the dates they were given. */
export const fitCarefully = (
  yard: YardFile,
  memory: PlanMemory,
  { anew = true, standing, near, longer }: FitOptions = {},
): Fitted | null => {
  const added = withoutAdded(yard, memory);
  if (!added) return null;
  const { without, order } = added;
  const compiled = compile(without);
  const asking = askingIn(compiled, order);
  const stood = standing && presentIn(keeping(compiled, standing), memory, near);
  const kept = standing ? undefined : near;
  const alone = presentIn(compiled, memory, kept);
  const dealt = { ...alone, dispatch: dealtAs(asking.state, alone.dispatch, kept) };
  const present = measuredBy(dealt, stood);
  const { problem } = asking;
  const found = earliestOf(asking, present, MOST_PLACES, { anew, longer: longerIn(problem, longer, 'earliest') });
  const answer = { asking, present, earliest: found };
  const { earliest, isCareful } = asPromised(order, answer, longerIn(problem, longer, 'careful'));
  return earliest.dispatch && { memory: memoryOf(asking.problem, earliest.dispatch), isCareful };
};

interface FitOptions {
  anew?: boolean;
  standing?: Keep | undefined;
  near?: PlanFile | undefined;
  /** What a longer search found for the order when it was asked about. */
  longer?: FoundLonger | undefined;
}

/**
 * Fits the one order that a memory does not know into the plan it stands for, just as the question "when could it be
 * ready?" did: so that a date that was answered, and then taken, is the date of the plan. Null when there is no such
 * order, or more than one, or no place for it. An order with a date given leaves the others what they have in hand before
 * theirs, where it can. `anew`: plans from nothing may be that place too. Beside a plan that stands
 * no order may be later than in it; without `standing`, what the yard keeps is of the plan `near`.
 */
export const fitIn = (yard: YardFile, memory: PlanMemory, options: FitOptions = {}): PlanMemory | null =>
  fitCarefully(yard, memory, options)?.memory ?? null;
