import type { PlanFile } from './plan.ts';

/** So many entries of each list are in one piece: a text of some 100 kB at most, read or written in a millisecond. */
const ENTRIES_A_PIECE = 250;

/** The texts of plans that were read from pieces, or written as some: a plan is never changed once it is made. */
const known = new WeakMap<PlanFile, readonly string[]>();

type Lists = Record<string, unknown[]>;

const listsOf = (plan: PlanFile): Lists =>
  Object.fromEntries(Object.entries(plan).filter(([, value]) => Array.isArray(value))) as Lists;

const partOf = (lists: Lists, from: number): Lists =>
  Object.fromEntries(
    Object.entries(lists)
      .map(([key, list]): [string, unknown[]] => [key, list.slice(from, from + ENTRIES_A_PIECE)])
      .filter(([, part]) => from === 0 || part.length > 0),
  );

/**
 * A plan as JSON texts, made one at a time as they are asked for: the whole plan with the first 250 entries of each
 * list, then 250 more of each, as many pieces as the longest list needs. The plan of a small yard is one piece. The
 * plan may not be changed afterwards: its texts are remembered.
 */
export function* piecesOfPlan(plan: PlanFile): Generator<string, void> {
  const before = known.get(plan);
  if (before) return yield* before;
  const lists = listsOf(plan);
  const longest = Math.max(...Object.values(lists).map(({ length }) => length));
  const pieces: string[] = [];
  for (let from = 0; from === 0 || from < longest; from += ENTRIES_A_PIECE) {
    const piece = JSON.stringify(from === 0 ? { ...plan, ...partOf(lists, from) } : partOf(lists, from));
    pieces.push(piece);
    yield piece;
  }
  known.set(plan, pieces);
}

/**
 * Puts a plan together from its pieces, given in order, one at a time. Throws at a text that is no JSON; checks
 * nothing else, as it reads only what `piecesOfPlan` wrote.
 */
export const planReader = () => {
  const pieces: string[] = [];
  let plan: PlanFile | null = null;
  return {
    add: (piece: string): void => {
      const part: PlanFile = JSON.parse(piece);
      pieces.push(piece);
      if (plan === null) plan = part;
      else
        for (const [key, entries] of Object.entries(listsOf(part))) (plan as unknown as Lists)[key]?.push(...entries);
    },
    /** Null while there was no piece. */
    plan: (): PlanFile | null => {
      if (plan) known.set(plan, pieces);
      return plan;
    },
  };
};
