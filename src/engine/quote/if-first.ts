import type { Order } from '../../../shared/order.ts';
import { dateOfDay } from '../../../shared/time.ts';
import { soonestComplete } from '../bound/soonest.ts';
import { withOneMore } from '../decoder/compile.ts';
import { decode } from '../decoder/decode.ts';
import { type DecoderState, decoderStateOf } from '../decoder/decoder-state.ts';
import { type Choices, type Dispatch, dispatchOf } from '../decoder/dispatch.ts';
import { NEVER, NONE } from '../decoder/problem.ts';
import { evaluate } from '../search/evaluation.ts';
import type { Found } from '../search/found.ts';
import { improvePlan } from '../search/improve.ts';
import { TRIED_CHOICES, waitingForLots } from '../search/quick.ts';
import { randomFrom } from '../search/random.ts';
import { firstExactly } from './exactly.ts';
import type { Asking } from './present.ts';
import { handoverOn } from './promise.ts';

/** Pours placed in all by the trials, and by the search, about. */
const POURS_SEARCHED = 6_000;
const MOST_SEARCHED = 600;
/** From so many of the plans tried, the soonest, the search sets out. */
const STARTS_SEARCHED = 3;
/** A day later is bad, but not so bad that the search would never pass through it. */
const WEIGHT = 3;

/**
 * The yard with the new order as if it were wanted today: pieces that are ready sooner then count before its day moves.
 */
const urgent = (order: Order, { without }: Asking): DecoderState => {
  const soon = { ...order, due: dateOfDay(without.today), wanted: undefined, weight: WEIGHT };
  return decoderStateOf(withOneMore(without, soon), dispatchOf(new Int32Array(0)));
};

/** Choices to start from: those of quick planning, and the same with each mould in turn left alone, as if it were not there. */
const startChoices = ({ problem }: DecoderState, order: number): Partial<Choices>[] => {
  const moulds = new Set(problem.orders[order]!.pieces.flatMap(({ casting }) => problem.castings[casting]!.moulds));
  const tried = [...TRIED_CHOICES, ...waitingForLots(problem)];
  return [NONE, ...moulds].flatMap((restMould) => tried.map((choices) => ({ ...choices, restMould })));
};

interface Trial {
  found: Found;
  completesAt: number;
}

const tryOut = (state: DecoderState, dispatch: Dispatch, order: number): Trial | null => {
  decode(state, dispatch);
  const completesAt = state.orders.completesAt[order]!;
  return completesAt === NONE ? null : { found: { dispatch, evaluation: evaluate(state), unmoved: 0 }, completesAt };
};

/** Plans of the order alone by several choices, then what a search finds that sets out from the soonest of them. */
function* trialsOf(state: DecoderState, order: number): Generator<Trial> {
  const pieces = Math.max(1, state.problem.orders[order]!.pieceCount);
  const most = Math.max(TRIED_CHOICES.length, Math.floor(POURS_SEARCHED / pieces));
  const started: Trial[] = [];
  for (const choices of startChoices(state, order).slice(0, most)) {
    const trial = tryOut(state, dispatchOf(Int32Array.of(order), choices), order);
    if (!trial) continue;
    started.push(trial);
    yield trial;
  }
  const plans = Math.min(MOST_SEARCHED, Math.floor(POURS_SEARCHED / pieces));
  const stop = { plans: Math.floor(plans / STARTS_SEARCHED), polishing: 0, judged: 0 };
  started.sort((a, b) => a.completesAt - b.completesAt);
  for (const { found } of started.slice(0, STARTS_SEARCHED)) {
    const trial = tryOut(state, improvePlan(state, found, stop, randomFrom(1)).dispatch, order);
    if (trial) yield trial;
  }
}

/**
 * Earliest minute at which a new order can be complete when it goes before all others: every mould, hour, bag and rack
 * space that is neither fixed nor set aside is there for it alone, and the others take what is left. On the right day, not
 * always at the earliest minute of it: the first of several plans on a day that no plan can beat (`soonestComplete`), or the
 * best of them, of a search of a counted length and, on small yards, of all ways there are. NEVER when it cannot be made within the horizon.
 */
export const completesIfFirst = (order: Order, asking: Asking): number => {
  const state = urgent(order, asking);
  const { problem } = state;
  const soonest = soonestComplete(problem, asking.added);
  if (soonest >= problem.horizonEnd) return NEVER;
  const soonestDay = handoverOn(problem, soonest);
  let best = NEVER;
  for (const { completesAt } of trialsOf(state, asking.added)) {
    best = Math.min(best, completesAt);
    if (handoverOn(problem, best) <= soonestDay) return best;
  }
  return firstExactly(asking, best);
};
