import { type Choices, DEFAULT_CHOICES, type Dispatch } from '../place/dispatch.ts';
import type { Problem } from '../place/problem.ts';

/**
 * How a plan was come by, in a form that can be stored beside it: the next planning starts from it, so that a small
 * change of the yard is a small change of the plan, and what a long search found is not lost to a quick one.
 */
export interface PlanMemory {
  /** Order ids in sequence. */
  sequence: string[];
  choices: Choices;
  /** Choices of single shifts, by the minute the shift starts. */
  inShift: [number, Choices][];
  /** An order that is held back to the shift that starts at a minute. */
  heldBack?: { order: string; from: number };
}

export const memoryOf = (problem: Problem, dispatch: Dispatch): PlanMemory => ({
  sequence: Array.from(dispatch.sequence, (o) => problem.yard.orders[o]!.id),
  choices: dispatch.choices,
  inShift: [...dispatch.inShift].map(([shift, choices]) => [problem.shifts.from[shift]!, choices]),
  ...(dispatch.heldBack && {
    heldBack: {
      order: problem.yard.orders[dispatch.heldBack.order]!.id,
      from: problem.shifts.from[dispatch.heldBack.shift]!,
    },
  }),
});

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

/** The dispatch a memory stands for in the yard as it is now: orders gone are left out, new ones come last by date. */
export const dispatchFrom = (problem: Problem, memory: PlanMemory): Dispatch => {
  const index = new Map(problem.yard.orders.map((o, i) => [o.id, i]));
  const known = memory.sequence.flatMap((id) => (index.has(id) ? [index.get(id)!] : []));
  const old = new Set(known);
  const added = [...index.values()].filter((o) => !old.has(o));
  added.sort((a, b) => problem.orders[a]!.dueDay - problem.orders[b]!.dueDay || a - b);
  const shifts = new Map(Array.from(problem.shifts.from, (from, s) => [from, s]));
  const { heldBack } = memory;
  const held = heldBack && index.has(heldBack.order) && shifts.has(heldBack.from);
  return {
    sequence: Int32Array.from([...known, ...added]),
    choices: completed(memory.choices, problem),
    inShift: new Map(
      memory.inShift.flatMap(([from, c]) =>
        shifts.has(from) ? [[shifts.get(from)!, completed(c, problem)] as const] : [],
      ),
    ),
    ...(held && { heldBack: { order: index.get(heldBack.order)!, shift: shifts.get(heldBack.from)! } }),
  };
};
