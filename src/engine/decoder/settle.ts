import { dateOfDay } from '../../../shared/time.ts';
import { materialRefusal, type Refusal, refusals } from './admit.ts';
import { decode } from './decode.ts';
import type { Placing } from './decoder-state.ts';
import type { Dispatch } from './dispatch.ts';
import { NONE, type Problem } from './problem.ts';

/** Orders dropped for lack of time that are tried again beside the rest; each try is a decode. */
const MOST_SECOND_TRIES = 12;
/** Pours placed in all by these tries, about: on the largest yards there are few of them. */
const POURS_TRIED_AGAIN = 100_000;

const secondTries = ({ orders }: Problem): number => {
  const pours = orders.reduce((n, { pieceCount }) => n + pieceCount, 0);
  return Math.min(MOST_SECOND_TRIES, Math.ceil(POURS_TRIED_AGAIN / Math.max(1, pours)));
};

const unfinished = (at: Placing): number[] =>
  Array.from(at.dispatch.sequence).filter((o) => !at.orders.excluded[o] && at.orders.completesAt[o] === NONE);

const longestPackingMinutes = (at: Placing): number => {
  const { shifts } = at.problem;
  let longest = 0;
  for (let s = 0; s < shifts.count; s++) longest = Math.max(longest, shifts.to[s]! - shifts.from[s]!);
  return longest;
};

/** Why an order that the last decode could not finish has to be left out. */
const refusalOf = (at: Placing, order: number): Refusal => {
  const { problem } = at;
  at.stock.ask();
  for (const { casting } of problem.orders[order]!.pieces) {
    const { mix, kg, perPiece, cuts } = problem.castings[casting]!;
    if (at.demand.need[casting] === 0) continue;
    at.stock.add(
      problem.mixes[mix]!.perBag,
      Math.max(problem.mixes[mix]!.bagStep, kg / problem.mixes[mix]!.yieldKgPerBag),
    );
    at.stock.add(perPiece);
    at.stock.addCuts(cuts);
  }
  at.stock.add(problem.orders[order]!.parts);
  at.stock.addCuts(problem.orders[order]!.cuts);
  const short = at.stock.shortBy(problem.horizonEnd - 1);
  if (short) return materialRefusal(problem, short.material, short.quantity);
  const { packMinutes } = problem.orders[order]!;
  if (problem.shifts.count === 0) return { cause: 'time', reason: 'no hours of work are planned' };
  if (packMinutes > longestPackingMinutes(at))
    return { cause: 'time', reason: `packing it takes ${packMinutes} minutes and no session is that long` };
  const last = dateOfDay(problem.today + problem.yard.yard.horizonDays);
  return { cause: 'time', reason: `the sessions up to ${last} have no time for it` };
};

/**
 * Decodes a dispatch and sees to it that every order is either planned whole or left out with a reason (R11): orders that
 * cannot be made are left out before, those that do not get done are left out after, and each of these is tried once
 * more beside the others, first ones of the sequence first. The plan is left in `at`.
 */
export const settle = (at: Placing, dispatch: Dispatch): Map<number, Refusal> => {
  const refused = refusals(at.problem, dispatch.sequence);
  at.orders.excluded.fill(0);
  for (const order of refused.keys()) at.orders.excluded[order] = 1;
  decode(at, dispatch);
  const dropped: number[] = [];
  for (let failed = unfinished(at); failed.length > 0; failed = unfinished(at)) {
    for (const order of failed) {
      refused.set(order, refusalOf(at, order));
      dropped.push(order);
    }
    for (const order of failed) at.orders.excluded[order] = 1;
    decode(at, dispatch);
  }
  for (const order of dropped.slice(0, secondTries(at.problem))) {
    at.orders.excluded[order] = 0;
    decode(at, dispatch);
    if (unfinished(at).length === 0) {
      refused.delete(order);
      continue;
    }
    at.orders.excluded[order] = 1;
  }
  if (dropped.length > 0) decode(at, dispatch);
  return refused;
};
