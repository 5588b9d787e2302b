import type { Order } from '../../../shared/order.ts';
import { dateOfDay, dayNumber } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { canonicalYard } from '../canonical-yard.ts';
import { compile } from '../decoder/compile.ts';
import type { DecoderState } from '../decoder/decoder-state.ts';
import { NEVER, NONE } from '../decoder/problem.ts';
import { settle } from '../decoder/settle.ts';
import { evaluate } from '../search/evaluation.ts';
import type { PlanMemory } from '../search/memory.ts';
import { type Asking, askingIn, type Present, presentIn, withOrderAt } from './present.ts';
import { handoverOn } from './promise.ts';

/** A promise that would get later: from which day to which. */
interface Push {
  order: string;
  from: string;
  to: string;
  days: number;
}

/** Whether an order could be ready on a chosen day, and which promises that would push. */
export interface ChosenDate {
  possible: boolean;
  pushes: Push[];
  reason?: string;
}

const MOST_PLACES = 40;

/** Promises that this plan breaks by more than the present one does. An order left out counts as never ready. */
const pushesOf = (state: DecoderState, present: Present): { pushes: Push[]; lost: number } => {
  const { problem } = state;
  const pushes: Push[] = [];
  let lost = 0;
  present.daysLate.forEach((before, o) => {
    const completesAt = state.orders.completesAt[o]!;
    const { dueDay } = problem.orders[o]!;
    if (completesAt === NONE) {
      if (before < NEVER) lost++;
      return;
    }
    if (dueDay >= NEVER || before >= NEVER) return;
    const day = handoverOn(problem, completesAt);
    const late = Math.max(0, day - dueDay);
    if (late > before)
      pushes.push({
        order: problem.yard.orders[o]!.id,
        from: dateOfDay(dueDay + before),
        to: dateOfDay(day),
        days: late - before,
      });
  });
  return { pushes, lost };
};

interface Best {
  pushes: Push[];
  weight: number;
}

const bestFor = ({ state, problem, added }: Asking, present: Present, day: number): Best | null => {
  const { sequence } = present.dispatch;
  const step = Math.max(1, Math.ceil((sequence.length + 1) / MOST_PLACES));
  let best: Best | null = null;
  for (let place = 0; place <= sequence.length; place += step) {
    settle(state, withOrderAt(present, place, added));
    const completesAt = state.orders.completesAt[added]!;
    if (completesAt === NONE || handoverOn(problem, completesAt) > day) continue;
    const { pushes, lost } = pushesOf(state, present);
    const weight = lost > 0 ? NEVER : evaluate(state).weightedDaysLate;
    if (lost === 0 && (!best || weight < best.weight)) best = { pushes, weight };
  }
  return best;
};

/**
 * Whether an order that is asked about could be ready on a day, and if so which promises it would push and by how much:
 * of the places in the sequence that make the day, the one that costs the others least. Not possible when even before
 * all others it would be later.
 */
export const askForDate = (asFiled: YardFile, order: Order, on: string, memory?: PlanMemory): ChosenDate => {
  const { yard } = canonicalYard(asFiled);
  const without = compile(yard);
  const [present, asking] = [presentIn(without, memory), askingIn(without, order)];
  const best = bestFor(asking, present, dayNumber(on));
  if (best) return { possible: true, pushes: best.pushes };
  return { possible: false, pushes: [], reason: 'even before everything else it would be later' };
};
