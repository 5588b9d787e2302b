import type { Order } from '../../../shared/order.ts';
import type { PlanFile } from '../../../shared/plan.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { InTurn } from '../bound/in-turn.ts';
import { compile, withOneMore } from '../decoder/compile.ts';
import { type DecoderState, decoderStateOf } from '../decoder/decoder-state.ts';
import { type Dispatch, dispatchOf } from '../decoder/dispatch.ts';
import { NEVER, NONE, type Problem } from '../decoder/problem.ts';
import { settle } from '../decoder/settle.ts';
import { beliefsOf } from '../odds/beliefs.ts';
import { dispatchFrom, type PlanMemory } from '../search/memory.ts';
import { quickSearch } from '../search/quick.ts';
import { standingDeal } from '../standing/standing-deal.ts';
import { completeInHand, handoverOn } from './promise.ts';

/** The plan that the yard has without the new order: what its promises are measured by. */
export interface Present {
  dispatch: Dispatch;
  /** Days late by order; NEVER for one that is left out. */
  daysLate: number[];
  /** Days after the date each is aimed at, given or else asked for; NEVER for one that is left out. */
  daysAfterAim: number[];
  /** The last minute at which each may be complete to keep the sessions that it has in hand before a date given; NEVER for any. */
  inHandUntil: number[];
  /** The last minute at which each may be complete in another plan; NEVER where only its days count. */
  until: number[];
  /** By order: 1 for one that is left out. */
  leftOut: Uint8Array;
  /** Shift after the last thing that is done for any order. */
  done: number;
}

/** Days late by order of a settled plan; NEVER for an order that it leaves out. */
export const daysLateOf = (state: DecoderState): number[] =>
  state.problem.orders.map((order, o) => {
    const completesAt = state.orders.completesAt[o]!;
    if (completesAt === NONE) return NEVER;
    return order.dueDay >= NEVER ? 0 : Math.max(0, handoverOn(state.problem, completesAt) - order.dueDay);
  });

/** Days after the date it is aimed at, given or else asked for, by order of a settled plan; NEVER for an order left out. */
export const daysAfterAim = (state: DecoderState): number[] =>
  state.problem.orders.map(({ aimDay }, o) => {
    const completesAt = state.orders.completesAt[o]!;
    if (completesAt === NONE) return NEVER;
    return aimDay >= NEVER ? 0 : Math.max(0, handoverOn(state.problem, completesAt) - aimDay);
  });

/**
 * Where dates are promised by their odds, all that an order has in hand was counted on when its date was told, and not only the
 * sessions that the yard keeps. Up to so many, which is a choice: in a trial on three yards 57 of 66 promises at 9 in 10 were kept with six
 * sessions, and 49 with one. With more, an order that is promised for long after its plan could not be moved.
 */
const COUNTED_ON = 6;

const mostInHand = ({ yard: { yard, record } }: Problem): number =>
  record && beliefsOf(record).isEnough ? Math.max(COUNTED_ON, yard.sessionsInHand) : yard.sessionsInHand;

/** Until when an order complete at a minute keeps the sessions it has in hand before its date; NEVER where it has none. */
const keepsInHandUntil = (problem: Problem, most: number, dueDay: number, completesAt: number): number => {
  if (dueDay >= NEVER || completesAt === NONE) return NEVER;
  for (let sessions = most; sessions > 0; sessions--) {
    const until = completeInHand(problem, dueDay, sessions);
    if (completesAt <= until) return until;
  }
  return NEVER;
};

/**
 * By order: until when each keeps as many sessions in hand before the date it was given as it has, up to those that the yard
 * keeps, or that its odds count on.
 */
const inHandUntil = ({ problem, orders }: DecoderState): number[] => {
  const most = mostInHand(problem);
  return problem.orders.map(({ dueDay }, o) => keepsInHandUntil(problem, most, dueDay, orders.completesAt[o]!));
};

/** A dispatch in which pieces go to whom they were for by the plan that stands, where there is one. */
export const dealtAs = (state: DecoderState, dispatch: Dispatch, near: PlanFile | undefined): Dispatch =>
  near ? { ...dispatch, deal: standingDeal(state, near) } : dispatch;

/** A dispatch in which anybody may get anything. */
export const withoutDeal = ({ deal: _deal, ...dispatch }: Dispatch): Dispatch => dispatch;

/**
 * The present plan: the one a memory stands for, a quick one where there is none. `near` is the plan whose pours a yard
 * keeps: they are for whom they were.
 */
export const presentOf = (yard: YardFile, memory?: PlanMemory, near?: PlanFile): Present =>
  presentIn(compile(yard), memory, near);

/** As `presentOf`, of a yard that is compiled. */
export const presentIn = (problem: Problem, memory?: PlanMemory, near?: PlanFile): Present => {
  const state = decoderStateOf(problem, dispatchOf(new Int32Array(0)));
  const dispatch = dealtAs(state, memory ? dispatchFrom(problem, memory) : quickSearch(state).dispatch, near);
  settle(state, dispatch);
  const last = state.orders.completesAt.reduce((t, x) => Math.max(t, x), problem.now);
  let done = 0;
  while (done < problem.shifts.count && problem.shifts.from[done]! < last) done++;
  return {
    dispatch,
    daysLate: daysLateOf(state),
    daysAfterAim: daysAfterAim(state),
    inHandUntil: inHandUntil(state),
    until: problem.orders.map(() => NEVER),
    leftOut: state.orders.excluded.slice(),
    done,
  };
};

/** A yard with one more order, ready for the decoder; the order comes last by index and has no date of its own. */
export interface Asking {
  state: DecoderState;
  problem: Problem;
  /** The same without the order. */
  without: Problem;
  added: number;
  /** When orders are complete at the soonest in a plan that is being made in `state`. */
  inTurn: InTurn;
}

/** An order that is only asked about: without dates of its own, so that none leads its plan. */
const asAsked = (order: Order): Order => ({ ...order, due: undefined, wanted: undefined });

/** A yard with an order that is only asked about. */
export const withAsked = (yard: YardFile, order: Order): YardFile => ({
  ...yard,
  orders: [...yard.orders, asAsked(order)],
});

/** Puts the order into the yard: what is asked is when. */
export const askingFor = (yard: YardFile, order: Order): Asking => askingIn(compile(yard), order);

/** As `askingFor`, into a yard that is compiled. */
export const askingIn = (without: Problem, order: Order): Asking => {
  const problem = withOneMore(without, asAsked(order));
  const state = decoderStateOf(problem, dispatchOf(new Int32Array(0)));
  return { state, problem, without, added: without.orders.length, inTurn: new InTurn(state) };
};

const insertInto = (list: Int32Array, place: number, order: number): Int32Array =>
  Int32Array.from([...list.slice(0, place), order, ...list.slice(place)]);

/** The present dispatch with one more order, put before the one at a place of its sequence, or last. */
export const withOrderAt = ({ dispatch }: Present, place: number, order: number): Dispatch => {
  const { sequence, setUp } = dispatch;
  const withIt = { ...dispatch, sequence: insertInto(sequence, place, order) };
  if (!setUp) return withIt;
  const before = place < sequence.length ? setUp.indexOf(sequence[place]!) : setUp.length;
  return { ...withIt, setUp: insertInto(setUp, before, order) };
};

/** The present dispatch with one more order in the place of another, which comes last instead. */
export const movedLast = ({ dispatch }: Present, moved: number, order: number): Dispatch => {
  const inPlace = (list: Int32Array): Int32Array => {
    const place = list.indexOf(moved);
    const others = Array.from(list).filter((o) => o !== moved);
    return Int32Array.from([...others.slice(0, place), order, ...others.slice(place), moved]);
  };
  const { sequence, setUp } = dispatch;
  return { ...dispatch, sequence: inPlace(sequence), ...(setUp && { setUp: inPlace(setUp) }) };
};

/** Another way to plan, in which no order is later than in the plan that stands. */
export const measuredBy = (present: Present, standing: Present | undefined): Present => {
  if (!standing) return present;
  const { daysLate, daysAfterAim, inHandUntil, leftOut } = standing;
  return { ...present, daysLate, daysAfterAim, inHandUntil, leftOut };
};

/** The same, but that no order may lose sessions that it has in hand before the date it was given. */
export const keepingInHand = (present: Present): Present => ({ ...present, until: present.inHandUntil });
