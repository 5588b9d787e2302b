import type { Problem } from '../decoder/problem.ts';
import { dispatchFrom, memoryOf, type PlanMemory } from '../search/memory.ts';
import type { Earliest } from './completes-under.ts';
import type { Longer } from './earliest.ts';

/** Ways to plan that a longer search found for an order that was asked about; null where it found none. */
export interface FoundLonger {
  /** The one in which it is ready soonest. */
  earliest: PlanMemory | null;
  /** The soonest that leaves the others what they have in hand. */
  careful: PlanMemory | null;
}

/** A longer search that is to be made, or what one found in a yard. */
export const longerIn = (
  problem: Problem,
  longer: 'look' | FoundLonger | undefined,
  which: keyof FoundLonger,
): Longer | undefined => {
  if (longer === undefined || longer === 'look') return longer;
  const memory = longer[which];
  return { found: memory && dispatchFrom(problem, memory) };
};

/** What a longer search found, in storable form. */
export const foundByLonger = (problem: Problem, { longer }: Earliest): PlanMemory | null =>
  longer ? memoryOf(problem, longer) : null;

/**
 * The same for the order once it is taken, which then has an id of its own.
 *
 * Example: `renamedIn({ earliest: null, careful: null }, 'asked', '27-001')` is { earliest: null, careful: null }.
 */
export const renamedIn = ({ earliest, careful }: FoundLonger, from: string, to: string): FoundLonger => {
  const name = (id: string): string => (id === from ? to : id);
  const renamed = (memory: PlanMemory | null): PlanMemory | null =>
    memory && {
      ...memory,
      sequence: memory.sequence.map(name),
      ...(memory.setUp && { setUp: memory.setUp.map(name) }),
      ...(memory.heldBack && { heldBack: memory.heldBack.map((one) => ({ ...one, order: name(one.order) })) }),
      ...(memory.pourFirst && { pourFirst: memory.pourFirst.map(name) }),
    };
  return { earliest: renamed(earliest), careful: renamed(careful) };
};
