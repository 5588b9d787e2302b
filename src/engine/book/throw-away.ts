import type { YardFile } from '../../../shared/yard-file.ts';
import { type Booked, booked, type Entry } from './entry.ts';
import { isOut } from './mould-state.ts';
import { pour } from './pour.ts';
import type { PourWork } from './work-done.ts';

/** What a pour takes from the stock. */
export const takesStock = ({ kind }: Entry): boolean => kind === 'stock' || kind === 'offcuts';

const leftDirty = (yard: YardFile, mould: string): Entry[] =>
  yard.moulds
    .filter((one) => one.id === mould && !isOut(one))
    .map(({ id }) => ({ kind: 'mould', mould: id, patch: { condition: 'dirty', prepped: false } }));

/**
 * A batch that went off before it was in its moulds: what was to go into them has left the stock, no mould holds a piece, and
 * each is to be cleaned and set up again. `work` is what would have been recorded of it, with fill times that may lie after
 * the yard's now. Refused as a pour is: a mould that is full meanwhile, or is no longer there.
 *
 * Example: one bag mixed for two moulds and thrown away: a bag and two sheets of mesh less, two moulds to clean.
 */
export const throwAway = (yard: YardFile, work: PourWork): Booked => {
  const filled = work.pours.map((one) => ({ ...one, filledAt: yard.yard.now }));
  const poured = pour(yard, { ...work, pours: filled });
  if (!poured.ok) return poured;
  return booked([...poured.entries.filter(takesStock), ...filled.flatMap(({ mould }) => leftDirty(yard, mould))]);
};
