import type { MemoryInFile } from '../../../shared/plan-memory.ts';
import { type Choices, DEFAULT_CHOICES, type Dispatch } from '../decoder/dispatch.ts';
import type { Problem } from '../decoder/problem.ts';

/**
 * How a plan was come by, in a form that can be stored beside it: the next planning starts from it, so that a small
 * change of the yard is a small change of the plan, and what a long search found is not lost to a quick one.
 */
export interface PlanMemory {
  /** Order ids in sequence. */
  sequence: string[];
  /** Order ids as their pieces are set up, where that is not the sequence. */
  setUp?: string[];
  choices: Choices;
  /** Choices of single shifts, by the minute the shift starts. */
  inShift: [number, Choices][];
  /** Orders that are held back, each to the shift that starts at a minute. */
  heldBack?: { order: string; from: number }[];
  /** Orders that wait for no finished piece for the sake of their date. */
  pourFirst?: string[];
}

/**
 * A dispatch in storable form: ids for indices, minutes for shifts, so that it outlives the problem it was made for.
 */
export const memoryOf = (problem: Problem, dispatch: Dispatch): PlanMemory => ({
  sequence: Array.from(dispatch.sequence, (o) => problem.yard.orders[o]!.id),
  ...(dispatch.setUp && { setUp: Array.from(dispatch.setUp, (o) => problem.yard.orders[o]!.id) }),
  choices: dispatch.choices,
  inShift: [...dispatch.inShift].map(([shift, choices]) => [problem.shifts.from[shift]!, choices]),
  ...(dispatch.heldBack && {
    heldBack: dispatch.heldBack.map(({ order, shift }) => ({
      order: problem.yard.orders[order]!.id,
      from: problem.shifts.from[shift]!,
    })),
  }),
  ...(dispatch.pourFirst && { pourFirst: dispatch.pourFirst.map((order) => problem.yard.orders[order]!.id) }),
});

/** Choices out of a file: what is no choice of ours, or not of its kind, is as if it were not there. */
const choicesFromFile = (stored: MemoryInFile['choices']): Choices => {
  const known = Object.entries(DEFAULT_CHOICES).map(([name, usual]) => {
    const value = stored[name];
    return [name, typeof value === typeof usual ? value : usual];
  });
  return Object.fromEntries(known);
};

/** A memory out of a plan file. */
export const memoryFromFile = (stored: MemoryInFile): PlanMemory => {
  const { sequence, setUp, heldBack, pourFirst } = stored;
  return {
    sequence,
    choices: choicesFromFile(stored.choices),
    inShift: stored.inShift.map(([from, choices]) => [from, choicesFromFile(choices)]),
    ...(setUp && { setUp }),
    ...(heldBack && { heldBack }),
    ...(pourFirst && { pourFirst }),
  };
};

/** Choices as they are now; a memory from before a choice was thought of lacks it. */
const completed = (choices: Choices, { mixes, moulds }: Problem): Choices => {
  const all = { ...DEFAULT_CHOICES, ...choices };
  const { heldMix, restMould } = DEFAULT_CHOICES;
  return {
    ...all,
    heldMix: all.heldMix < mixes.length ? all.heldMix : heldMix,
    restMould: all.restMould < moulds.length ? all.restMould : restMould,
  };
};

/** A list of orders as it is now: those gone are left out, new ones come last by date. */
const listFrom = (problem: Problem, index: ReadonlyMap<string, number>, ids: readonly string[]): Int32Array => {
  const known = ids.flatMap((id) => (index.has(id) ? [index.get(id)!] : []));
  const old = new Set(known);
  const added = [...index.values()].filter((o) => !old.has(o));
  added.sort((a, b) => problem.orders[a]!.aimDay - problem.orders[b]!.aimDay || a - b);
  return Int32Array.from([...known, ...added]);
};

/** The dispatch a memory stands for in the yard as it is now. */
export const dispatchFrom = (problem: Problem, memory: PlanMemory): Dispatch => {
  const index = new Map(problem.yard.orders.map((o, i) => [o.id, i]));
  const shifts = new Map(Array.from(problem.shifts.from, (from, s) => [from, s]));
  // A memory of before several could be held back names one, by itself.
  const held = [memory.heldBack ?? []]
    .flat()
    .flatMap(({ order, from }) =>
      index.has(order) && shifts.has(from) ? [{ order: index.get(order)!, shift: shifts.get(from)! }] : [],
    );
  const poured = (memory.pourFirst ?? []).flatMap((order) => index.get(order) ?? []);
  return {
    sequence: listFrom(problem, index, memory.sequence),
    ...(memory.setUp && { setUp: listFrom(problem, index, memory.setUp) }),
    choices: completed(memory.choices, problem),
    inShift: new Map(
      memory.inShift.flatMap(([from, c]) =>
        shifts.has(from) ? [[shifts.get(from)!, completed(c, problem)] as const] : [],
      ),
    ),
    ...(held.length > 0 && { heldBack: held }),
    ...(poured.length > 0 && { pourFirst: poured }),
  };
};
