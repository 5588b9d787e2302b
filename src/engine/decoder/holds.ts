import type { Minute } from '../../../shared/time.ts';
import type { DecoderState } from './decoder-state.ts';
import type { Dispatch } from './dispatch.ts';
import type { CompiledOrder, Hold, Problem, Shifts } from './problem.ts';

/** The first shift that starts at a minute or after it; one more than there are where none does. */
const firstShiftFrom = ({ count, from }: Shifts, minute: Minute): number => {
  let shift = 0;
  while (shift < count && from[shift]! < minute) shift++;
  return shift;
};

/** Orders for which nothing may be poured before a day that comes after the first shift, each with its first shift (R11). */
export const holdsByDay = (orders: readonly CompiledOrder[], shifts: Shifts, now: Minute): Hold[] =>
  orders.flatMap(({ from }, order) => {
    const shift = from > now ? firstShiftFrom(shifts, from) : 0;
    return shift > 0 ? [{ order, shift }] : [];
  });

/** What a dispatch holds back and what the yard does, each order once, until the later of the two. */
const holdsOf = ({ holds }: Problem, { heldBack = [] }: Dispatch): readonly Hold[] => {
  if (heldBack.length === 0) return holds;
  const shifts = new Map(holds.map(({ order, shift }) => [order, shift]));
  for (const { order, shift } of heldBack) shifts.set(order, Math.max(shift, shifts.get(order) ?? 0));
  return [...shifts].map(([order, shift]) => ({ order, shift })).filter(({ shift }) => shift > 0);
};

/** Takes the holds of a dispatch up, before a plan is begun with it. */
export const takeHolds = (state: DecoderState, dispatch: Dispatch): void => {
  state.holds = holdsOf(state.problem, dispatch);
  state.heldUntil.fill(0);
  for (const { order, shift } of state.holds) state.heldUntil[order] = shift;
};

/** From a shift on pieces of orders that were held back until it are poured like any other's. */
export const releaseHeld = (state: DecoderState, shift: number): void => {
  const { demand, holds } = state;
  for (const hold of holds) {
    if (hold.shift !== shift) continue;
    for (let c = 0; c < demand.need.length; c++)
      for (let i = demand.head[c]!; i < demand.end[c]!; i++) {
        if (demand.order[i] !== hold.order) continue;
        demand.need[c] = demand.need[c]! + demand.left[i]!;
        demand.total += demand.left[i]!;
      }
  }
};

/** Where in its queue the order stands that the next piece of a casting is for; past its end where it may be for none. */
export const queueHead = (state: DecoderState, casting: number, batchStart: Minute): number => {
  const { demand, holds, heldUntil, problem } = state;
  const [head, end] = [demand.head[casting]!, demand.end[casting]!];
  if (holds.length === 0 && !problem.isAnyFrom) return head;
  const mayHave = (order: number) => heldUntil[order]! <= state.shift && problem.orders[order]!.from <= batchStart;
  for (let i = head; i < end; i++) if (demand.left[i]! > 0 && mayHave(demand.order[i]!)) return i;
  return end;
};

/** Where in its list the next wanted piece of a casting stands that nobody holds back; the first one where all are held. */
export const wantedHead = ({ demand, holds, heldUntil, shift }: DecoderState, casting: number): number => {
  const [head, end] = [demand.wantedHead[casting]!, demand.wantedEnd[casting]!];
  if (holds.length === 0) return head;
  for (let i = head; i < end; i++)
    if (demand.wantedLeft[i]! > 0 && heldUntil[demand.wantedOrder[i]!]! <= shift) return i;
  return head;
};

/** Place in the sequence of the next piece of a casting that may be poured now; only while there are some. */
export const placeWanted = (state: DecoderState, casting: number): number =>
  state.demand.wantedPlace[wantedHead(state, casting)]!;
