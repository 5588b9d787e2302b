import type { Order } from '../../../shared/order.ts';
import type { Quote } from '../../../shared/quote.ts';
import { dateOfDay } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { compile } from '../place/compile.ts';
import { type Dispatch, dispatchOf } from '../place/dispatch.ts';
import { type Placing, placingOf } from '../place/placing.ts';
import { NEVER, NONE, type Problem } from '../place/problem.ts';
import { settle } from '../place/settle.ts';
import { quickSearch, TRIED_CHOICES } from '../search/quick.ts';
import { handoverOn, promiseDay } from './promise.ts';

/** Places in the sequence that are tried for the new order; in a longer sequence every second, third … one is. */
const MOST_PLACES = 40;

/** Days late by order of a settled plan; NEVER for an order that it leaves out. */
const daysLateOf = (at: Placing): number[] =>
  at.problem.orders.map((order, o) => {
    const completesAt = at.orders.completesAt[o]!;
    if (completesAt === NONE) return NEVER;
    return order.dueDay >= NEVER ? 0 : Math.max(0, handoverOn(at.problem, completesAt) - order.dueDay);
  });

/** The plan that the yard has without the new order: what its promises are measured by. */
interface Present {
  dispatch: Dispatch;
  daysLate: number[];
  /** Shift after the last thing that is done for any order. */
  done: number;
}

const presentOf = (yard: YardFile): Present => {
  const problem = compile(yard);
  const at = placingOf(problem, dispatchOf(new Int32Array(0)));
  const { dispatch } = quickSearch(at);
  settle(at, dispatch);
  const last = at.orders.completesAt.reduce((t, x) => Math.max(t, x), problem.now);
  let done = 0;
  while (done < problem.shifts.count && problem.shifts.from[done]! < last) done++;
  return { dispatch, daysLate: daysLateOf(at), done };
};

const insert = (sequence: Int32Array, place: number, order: number): Int32Array =>
  Int32Array.from([...sequence.slice(0, place), order, ...sequence.slice(place)]);

/** When the new order is complete under a dispatch, if no promise gets later by it; NEVER otherwise. */
const completesUnder = (at: Placing, dispatch: Dispatch, added: number, present: Present): number => {
  settle(at, dispatch);
  const completesAt = at.orders.completesAt[added]!;
  if (completesAt === NONE) return NEVER;
  const late = daysLateOf(at);
  return present.daysLate.every((days, o) => late[o]! <= days) ? completesAt : NEVER;
};

/** Earliest completion with the new order's pours held back to some shift, found by halving; NEVER if there is none. */
const earliestBehind = (at: Placing, present: Present, added: number): number => {
  const sequence = insert(present.dispatch.sequence, present.dispatch.sequence.length, added);
  const heldTo = (shift: number) => completesUnder(at, { ...present.dispatch, sequence, heldBack: { order: added, shift } }, added, present);
  let [low, high, best] = [0, Math.min(present.done, at.problem.shifts.count - 1), NEVER];
  if (high < 0) return NEVER;
  best = heldTo(high);
  while (low < high) {
    const middle = (low + high) >> 1;
    const at = heldTo(middle);
    best = Math.min(best, at);
    if (at < NEVER) high = middle;
    else low = middle + 1;
  }
  return best;
};

const earliestAnywhere = (at: Placing, present: Present, added: number): number => {
  const { sequence } = present.dispatch;
  const step = Math.max(1, Math.ceil((sequence.length + 1) / MOST_PLACES));
  let best = NEVER;
  for (let place = 0; place <= sequence.length; place += step) {
    const dispatch = { ...present.dispatch, sequence: insert(sequence, place, added) };
    best = Math.min(best, completesUnder(at, dispatch, added, present));
  }
  return Math.min(best, earliestBehind(at, present, added));
};

const earliestIfFirst = (at: Placing, present: Present, added: number): number => {
  const sequence = insert(present.dispatch.sequence, 0, added);
  let best = NEVER;
  for (const choices of TRIED_CHOICES) {
    settle(at, dispatchOf(sequence, choices));
    if (at.orders.completesAt[added] !== NONE) best = Math.min(best, at.orders.completesAt[added]!);
  }
  return best;
};

/** Why the order cannot be made, for a quote without dates. */
const reasonAgainst = (at: Placing, present: Present, added: number): string => {
  const { sequence } = present.dispatch;
  const refused = settle(at, { ...present.dispatch, sequence: insert(sequence, sequence.length, added) });
  return refused.get(added)?.reason ?? 'the sessions planned have no time for it beside what is promised';
};

const dateAt = (problem: Problem, minute: number): string | null =>
  minute >= NEVER ? null : dateOfDay(handoverOn(problem, minute));

/**
 * When an order that is not taken yet could be ready. `earliestOn`: over every place in the sequence, the earliest
 * hand-over day at which no existing order has more days late than without it. `promiseOn` adds the yard's sessions in
 * hand. `ifFirstOn`: when it goes before all others, whatever becomes of them. The order's `due` plays no part.
 */
export const quoteOrder = (yard: YardFile, order: Order): Quote => {
  const present = presentOf(yard);
  const problem = compile({ ...yard, orders: [...yard.orders, { ...order, due: undefined }] });
  const added = yard.orders.length;
  const at = placingOf(problem, dispatchOf(new Int32Array(0)));
  const earliest = earliestAnywhere(at, present, added);
  const ifFirst = Math.min(earliest, earliestIfFirst(at, present, added));
  if (ifFirst >= NEVER || earliest >= NEVER)
    return { earliestAt: null, earliestOn: null, promiseOn: null, ifFirstOn: null, limits: [], reason: reasonAgainst(at, present, added) };
  const promise = promiseDay(problem, earliest);
  return {
    earliestAt: problem.calendar.instantText(earliest),
    earliestOn: dateAt(problem, earliest),
    promiseOn: promise === null ? null : dateOfDay(promise),
    ifFirstOn: dateAt(problem, ifFirst),
    limits: [],
  };
};
