import type { PlanFile } from '../../../shared/plan.ts';
import { dayNumber } from '../../../shared/time.ts';
import type { DecoderState } from '../decoder/decoder-state.ts';
import { NONE } from '../decoder/problem.ts';
import { settle } from '../decoder/settle.ts';
import { type Found, foundIn } from '../search/found.ts';
import { dispatchFrom, type PlanMemory } from '../search/memory.ts';
import type { PresentPours } from '../search/nearness.ts';
import { quickSearch } from '../search/quick.ts';
import { searchOn } from '../search/search.ts';
import { leastHarm } from './least-harm.ts';
import { type Candidate, candidateOf, harmOf } from './standing-plan.ts';

/** What is rescued from, and how. */
export interface Rescuing {
  state: DecoderState;
  given: ReadonlySet<string>;
  near: PlanFile;
  memory: PlanMemory | undefined;
  present: PresentPours | undefined;
  seed: number;
}

/** Whether an order with a date given is ready later than in the plan that stands, or falls out: more than that a date was given now. */
const isAnyLater = ({ problem, readyOn }: Candidate, near: PlanFile, given: ReadonlySet<string>): boolean => {
  const before = new Map(near.orders.map(({ id, completesOn }) => [id, dayNumber(completesOn)]));
  return problem.yard.orders.some(({ id }, o) => {
    const day = given.has(id) ? before.get(id) : undefined;
    return day !== undefined && (readyOn[o] === NONE || readyOn[o]! > day);
  });
};

/** One after another: on from what was chosen, from nothing just as a plan without a past, and from what is remembered by other chances. */
const searches = ({ state, memory, present, seed }: Rescuing, chosen: Candidate): (() => Found)[] => {
  const nothing = () => quickSearch(state, { first: [] });
  const remembered = (): Found => {
    if (!memory) return nothing();
    const dispatch = dispatchFrom(state.problem, memory);
    settle(state, dispatch);
    return foundIn(state, dispatch);
  };
  return [
    () => searchOn(state, { ...chosen, unmoved: 0 }, 'normal', seed, present),
    () => searchOn(state, nothing(), 'normal', seed),
    () => searchOn(state, remembered(), 'normal', seed + 1),
  ];
};

/**
 * Plans that may spare dates that were given what the chosen one does to them, looked for before that is said. None are
 * where it is sure that no plan does less; the last is the first that does as little as any could. Where nobody is ready later
 * than in the plan that stands, only a date was given that it does not keep, which whoever gives it is asked about: one search
 * has to do.
 */
export const rescuesOf = (rescuing: Rescuing, chosen: Candidate): Candidate[] => {
  const { state, given, near } = rescuing;
  const harm = harmOf(chosen, near, given);
  if (harm <= 0) return [];
  const least = leastHarm(state.problem, near, given, harm) + 1e-6;
  const found: Candidate[] = [];
  if (harm <= least) return found;
  for (const search of searches(rescuing, chosen).slice(0, isAnyLater(chosen, near, given) ? undefined : 1)) {
    const rescue = candidateOf(state, search().dispatch);
    found.push(rescue);
    if (harmOf(rescue, near, given) <= least) break;
  }
  return found;
};
