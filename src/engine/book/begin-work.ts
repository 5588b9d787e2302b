import type { Begun } from '../../../shared/plan.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { apply } from './apply.ts';
import { enter } from './enter.ts';
import type { Entry } from './entry.ts';
import type { WorkDone } from './work-done.ts';

/** A task of a plan that has begun: what will be recorded of it, when it is over, and how the plan has it. */
export interface TaskBegun {
  work: WorkDone;
  /** An instant after the yard's now. */
  end: string;
  as: Partial<Begun>;
}

const at = (yard: YardFile, now: string): YardFile => ({ ...yard, yard: { ...yard.yard, now } });

const takesStock = ({ kind }: Entry): boolean => kind === 'stock';

const joined = (begun: Begun | undefined, more: Partial<Begun>): Begun => ({
  batches: [...(begun?.batches ?? []), ...(more.batches ?? [])],
  pours: [...(begun?.pours ?? []), ...(more.pours ?? [])],
  strips: [...(begun?.strips ?? []), ...(more.strips ?? [])],
  packs: [...(begun?.packs ?? []), ...(more.packs ?? [])],
  preps: [...(begun?.preps ?? []), ...(more.preps ?? [])],
});

/**
 * A yard in which a task is under way (R14): what it takes is out of the stock, moulds and pieces are as they were. Null
 * where it cannot have begun: what it is done to is not there, or is out of use.
 */
export const begin = (yard: YardFile, { work, end, as }: TaskBegun): YardFile | null => {
  const done = enter(at(yard, end), work);
  if (!done.ok) return null;
  return { ...apply(yard, done.entries.filter(takesStock)), begun: joined(yard.begun, as) };
};
