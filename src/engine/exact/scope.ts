import { NEVER, type Problem } from '../decoder/problem.ts';
import { goodsOfBatch, mayRunShort } from './goods.ts';

/** Pieces to be made at most; with more there are too many ways to be through with them. */
const MOST_PIECES = 9;
const MOST_MOULDS = 4;
const MOST_SHIFTS = 400;

const piecesOf = ({ orders }: Problem, made: readonly number[]): number =>
  made.reduce((n, o) => n + orders[o]!.pieceCount, 0);

/** One person at any time, in sessions that are not cut at midnight. */
const isOnePerson = ({ shifts }: Problem): boolean => {
  for (let i = 0; i < shifts.people.length; i++) if (shifts.people[i]! > 1) return false;
  for (let s = 1; s < shifts.count; s++) if (shifts.from[s] === shifts.to[s - 1]) return false;
  return true;
};

const hasNothingBegun = ({ begun, inMould, fixed }: Problem): boolean =>
  begun.strips.length + begun.packs.length + begun.preps.length === 0 &&
  !inMould.some(({ isBegun }) => isBegun) &&
  !fixed.batches.some(({ isBegun }) => isBegun);

/** Parts that may run short are used in turn, by packing alone; lengths are not cut at all. */
const isUncut = ({ cuts, sheets }: Problem['castings'][number]): boolean => cuts.length === 0 && sheets.length === 0;

const hasPlainGoods = (problem: Problem, made: readonly number[]): boolean => {
  const orders = made.map((o) => problem.orders[o]!);
  const pours = piecesOf(problem, made);
  const most = problem.materials.map((_, m) => {
    const parts = orders.reduce(
      (n, { parts: list }) => n + (list.find(({ material }) => material === m)?.quantity ?? 0),
      0,
    );
    const each = problem.castings.map((_c, c) =>
      (goodsOfBatch(problem, [c]) ?? []).reduce((n, { material, quantity }) => n + (material === m ? quantity : 0), 0),
    );
    return parts + pours * Math.max(0, ...each);
  });
  const isShort = (material: number) => mayRunShort(problem, material, most[material]!);
  return (
    orders.every(({ cuts }) => cuts.length === 0) &&
    orders.every(({ parts, packMinutes }) => packMinutes > 0 || !parts.some(({ material }) => isShort(material))) &&
    orders.every(({ pieces }) => pieces.every(({ casting }) => isUncut(problem.castings[casting]!)))
  );
};

/**
 * Whether all ways to make these orders can be looked through: one person, few pieces and moulds, nothing under way,
 * no lengths to cut, no packing in spells. What is fixed is not kept: a plan that keeps it is one of all there are. The room for curing and the dates of bags are not asked about: what is found is tried in the yard itself,
 * and what is proven holds with less room and fewer bags as well.
 */
export const canSearchAll = (problem: Problem, made: readonly number[]): boolean =>
  made.length > 0 &&
  piecesOf(problem, made) <= MOST_PIECES &&
  problem.moulds.filter(({ usableFrom }) => usableFrom < NEVER).length <= MOST_MOULDS &&
  problem.shifts.count <= MOST_SHIFTS &&
  made.every((o) => problem.orders[o]!.mostSpells === 0 && problem.yard.orders[o]!.packedMinutes === undefined) &&
  isOnePerson(problem) &&
  hasNothingBegun(problem) &&
  hasPlainGoods(problem, made) &&
  problem.mixes.length < 64;

/** Whether something of a plan is to be kept: what is found by a search that does not keep it is then none. */
export const isAnythingFixed = ({ yard: { keep } }: Problem): boolean =>
  keep !== undefined && Object.values(keep).some((tasks) => tasks.length > 0);
