import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { type Booked, booked, type Entry } from './entry.ts';
import { goodsOfBatch } from './goods.ts';
import { afterSetUp, isOut } from './mould-state.ts';
import { bagsPoured, batchTakes, pour } from './pour.ts';
import { takeFromStock } from './stock-taken.ts';
import type { Filled, PourWork } from './work-done.ts';

/** What a batch that went off leaves of its moulds: something was in them, or nothing was. */
export type MouldsLeft = 'to clean' | 'set up';

/** What a pour takes from the stock. */
export const takesStock = ({ kind }: Entry): boolean => kind === 'stock' || kind === 'offcuts' || kind === 'rests';

const leftDirty = (yard: YardFile, mould: string): Entry[] =>
  yard.moulds
    .filter((one) => one.id === mould && !isOut(one))
    .map(({ id }) => ({ kind: 'mould', mould: id, patch: { condition: 'dirty', prepped: false } }));

/** A mould in which nothing was stays set up; where nobody had recorded that, it is recorded with this. */
const leftSetUp = (yard: YardFile, { mould: id, casting, coated }: Filled): Entry[] =>
  yard.moulds
    .filter((one) => one.id === id && !isOut(one))
    .map((mould) => ({ kind: 'mould', mould: id, patch: afterSetUp(mould, casting, coated) }));

/** No piece came of what it took. */
const asSpoiled = (entry: Entry): Entry =>
  entry.kind === 'stock' || entry.kind === 'offcuts' || entry.kind === 'rests'
    ? { ...entry, why: { ...entry.why, kind: 'spoiled' } }
    : entry;

/** Bags and what is mixed into them; sleeves and mesh stay in the moulds. */
const mixTaken = (yard: YardFile, work: PourWork): Entry[] => {
  const mixed = bagsPoured(work, yard);
  if (!mixed) return [];
  return takeFromStock(yard, goodsOfBatch(mixed.mix, mixed.bags, [], yard), [], batchTakes(work, mixed.mix.id));
};

/** When it was mixed, as far as that is known: told of the day after, its bags were opened the day before all the same. */
const begunAt = ({ pours, mixedFrom }: PourWork, now: string): string => {
  if (mixedFrom !== undefined) return mixedFrom;
  const instants = [...pours.map(({ filledAt }) => filledAt), now];
  return instants.reduce((one, other) => (minuteOf(other) < minuteOf(one) ? other : one));
};

/**
 * A batch that went off before it was poured: no mould holds a piece. Where something was in the moulds, what was to go into
 * them has left the stock, and each is to be cleaned and set up again; where nothing was, the mix alone is gone, and they stay
 * set up. `work` is what would have been recorded of it, with fill times that may lie after
 * the yard's now. Refused as a pour is: a mould that is full meanwhile, or is no longer there.
 *
 * Example: one bag mixed for two moulds and thrown away: a bag and two sheets of mesh less, two moulds to clean; or a bag
 * less, and two moulds ready to pour.
 */
export const throwAway = (yard: YardFile, work: PourWork, left: MouldsLeft): Booked => {
  const filled = work.pours.map((one) => ({ ...one, filledAt: yard.yard.now }));
  const thrown = { ...work, pours: filled, mixedFrom: begunAt(work, yard.yard.now) };
  const poured = pour(yard, thrown);
  if (!poured.ok) return poured;
  if (left === 'set up')
    return booked([...mixTaken(yard, thrown).map(asSpoiled), ...filled.flatMap((one) => leftSetUp(yard, one))]);
  return booked([
    ...poured.entries.filter(takesStock).map(asSpoiled),
    ...filled.flatMap(({ mould }) => leftDirty(yard, mould)),
  ]);
};
