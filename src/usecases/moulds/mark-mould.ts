import { type MarkDetails, type MouldMark, mark } from '../../engine/book/mark.ts';
import type { Outcome, UseCaseContext } from '../core/context.ts';
import { type Changed, changing } from '../plan/changing.ts';
import { writeBooked } from '../plan/recording-work.ts';

export { type MarkDetails, MOULD_MARKS, type MouldMark } from '../../engine/book/mark.ts';

/** Records what became of a mould; the plan that comes of it says which dates moved. */
export const markMould = (
  context: UseCaseContext,
  id: string,
  what: MouldMark,
  details: MarkDetails,
): Promise<Outcome<Changed<null>>> =>
  changing(context, { kind: `mould ${what}`, words: `${id} marked ${what}` }, (tx, yard) =>
    writeBooked(tx, mark(yard, id, what, details)),
  );
