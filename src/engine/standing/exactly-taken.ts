import type { Keep, PlanFile } from '../../../shared/plan.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { compile, keeping } from '../decoder/compile.ts';
import { decoderStateOf } from '../decoder/decoder-state.ts';
import { NEVER, NONE } from '../decoder/problem.ts';
import { canSearchAll } from '../exact/scope.ts';
import { exactlyBefore, lastMinuteBy } from '../quote/exactly.ts';
import { withoutAdded } from '../quote/fit-in.ts';
import { type Asking, askingIn, type Present, presentIn } from '../quote/present.ts';
import { dispatchFrom, memoryOf, type PlanMemory } from '../search/memory.ts';
import { type Candidate, candidateOf } from './standing-plan.ts';

/** What is known of a yard without the order that was just taken, and of the plan in which it has a place. */
interface Taken {
  asking: Asking;
  present: Present;
  inPlace: Candidate;
}

/** First minute of the day on which the order is ready as it is planned; NEVER where it is not, or another one later by it. */
const readyBy = ({ asking, present, inPlace }: Taken): number => {
  const { problem, added } = asking;
  const place = new Map(inPlace.problem.yard.orders.map(({ id }, o) => [id, o]));
  const now = problem.yard.orders.map(({ id }) => place.get(id)!);
  const isKept = present.daysLate.every((days, o) => inPlace.daysLate[now[o]!]! <= days);
  const day = inPlace.readyOn[now[added]!]!;
  return isKept && day !== NONE ? lastMinuteBy(problem, day - 1) + 1 : NEVER;
};

/**
 * The plan in which an order that is just taken is ready on the day that looking through everything found for it, where it is
 * sooner by it than in the plan found so far, or another one no later; null where it is not, or there is no such order.
 */
export const exactlyTaken = (
  yard: YardFile,
  memory: PlanMemory,
  standing: Keep,
  { inPlace, near }: { inPlace: Candidate; near: PlanFile | undefined },
): Candidate | null => {
  const added = withoutAdded(yard, memory);
  if (!added) return null;
  const without = compile(added.without);
  const asking = askingIn(without, added.order);
  const all = asking.problem.orders.map((_, o) => o);
  if (!canSearchAll(asking.problem, all)) return null;
  const present = presentIn(keeping(without, standing), memory, near);
  const before = readyBy({ asking, present, inPlace });
  const { found } = exactlyBefore(asking, present, before);
  if (!found) return null;
  const { problem, dispatch } = found;
  const kept = compile({ ...yard, keep: problem.yard.keep });
  const taken = dispatchFrom(kept, memoryOf(problem, dispatch));
  return candidateOf(decoderStateOf(kept, taken), taken);
};
