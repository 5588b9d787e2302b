import type { PlanBatch, PlanFile, PlanPour, PlanStrip } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { coatToCome } from './carry-coat.ts';
import { type Carrying, onTime } from './carrying.ts';
import { goodsOfBatch, type Taken } from './goods.ts';
import { bagsPoured } from './pour.ts';
import { cutFromFor } from './sheets-cut.ts';
import { withoutCutsFor } from './sticks-left.ts';
import { shortOf } from './stock-taken.ts';
import type { Filled, PourWork } from './work-done.ts';

/** The pours of each batch of a plan. */
const poursByBatch = ({ pours }: PlanFile): ReadonlyMap<string, PlanPour[]> => {
  const batches = new Map<string, PlanPour[]>();
  for (const pour of pours) {
    const own = batches.get(pour.batch);
    if (own) own.push(pour);
    else batches.set(pour.batch, [pour]);
  }
  return batches;
};

/**
 * The batch of a plan that was poured, with its pours: the same moulds and pieces, for the same orders
 * where they were poured for one. Null when it has none such.
 */
export const batchPoured = (
  plan: PlanFile,
  pours: readonly Pick<Filled, 'mould' | 'casting' | 'order'>[],
): { batch: PlanBatch; own: PlanPour[] } | null => {
  const planned = poursByBatch(plan);
  const poured = new Map(pours.map((pour) => [pour.mould, pour]));
  const isOne = ({ mould, casting, order }: PlanPour): boolean => {
    const pour = poured.get(mould);
    return pour?.casting === casting && (pour.order === null || pour.order === order);
  };
  for (const batch of plan.batches) {
    const own = planned.get(batch.id) ?? [];
    if (own.length === pours.length && own.every(isOne)) return { batch, own };
  }
  return null;
};

/** The strip of a piece that is in its mould now, as it was planned. */
const stripOf = ({ mould, order, stripStart, stripEnd, pieceReadyAt }: PlanPour): PlanStrip => ({
  ...{ mould, stripStart, stripEnd, pieceReadyAt },
  ...(order === undefined ? {} : { order }),
});

/** What a batch takes from the stock; null where its pieces are of no one mix. */
const takenBy = (before: YardFile, work: PourWork): Taken | null => {
  const poured = bagsPoured(work, before);
  const castings = work.pours.map(({ casting }) => casting);
  return poured && goodsOfBatch(poured.mix, poured.bags, castings, before);
};

/** A whole batch was poured: its pieces are in their moulds, its materials and lengths are taken. */
export const afterPoured = (carrying: Carrying, work: PourWork): PlanFile | null => {
  const { plan, before } = carrying;
  const found = batchPoured(plan, work.pours);
  const taken = takenBy(before, work);
  if (!found || !taken || bagsPoured(work, before)?.bags !== found.batch.bags) return null;
  const { batch, own } = found;
  if (shortOf(before, taken, cutFromFor(plan, batch.id)) !== null) return null;
  const coats = new Map(work.pours.map(({ mould }) => [mould, coatToCome(plan, mould)]));
  // Poured without the coat it was to get: its turns are others than the plan counts on.
  if (work.pours.some(({ mould, coated }) => !coated && coats.get(mould) !== undefined)) return null;
  const filledAt = new Map(work.pours.map((pour) => [pour.mould, pour.filledAt]));
  if (!own.every((pour) => onTime(pour.fillEnd, minuteOf(filledAt.get(pour.mould)!)))) return null;
  const left = {
    ...plan,
    batches: plan.batches.filter((one) => one !== batch),
    pours: plan.pours.filter((pour) => !own.includes(pour)),
    coats: plan.coats.filter((coat) => coats.get(coat.mould) !== coat),
    strips: [...plan.strips, ...own.map(stripOf)],
    score: { ...plan.score, batches: plan.score.batches - 1, bags: plan.score.bags - batch.bags },
  };
  return withoutCutsFor(left, batch.id, taken, carrying);
};
