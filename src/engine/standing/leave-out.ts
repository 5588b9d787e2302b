import type { Keep, KeptPack, KeptStrip } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import { coatsBefore } from '../book/coat-before.ts';

type KeptBatch = Keep['batches'][number];

/** What may be left out of a session so that the rest fits. */
export type LeftOut = ReadonlySet<KeptBatch | KeptPack | KeptStrip>;

/** What is kept less something, and the batches of that. */
export interface KeptLess {
  keep: Keep;
  left: KeptBatch[];
}

const beginOf = (one: KeptBatch | KeptPack | KeptStrip): number => {
  if ('stripStart' in one) return minuteOf(one.stripStart);
  return minuteOf('packStart' in one ? one.packStart : one.start);
};

const lastFirst = <T extends KeptBatch | KeptPack | KeptStrip>(list: readonly T[]): T[] =>
  list.toSorted((a, b) => beginOf(b) - beginOf(a));

/** Strips after which nothing is done with their mould: it can wait with its piece for the next session. */
const lastStrips = ({ strips = [], pours }: Keep): KeptStrip[] =>
  strips.filter(
    (strip) =>
      !pours.some(({ mould, prepStart }) => mould === strip.mould && minuteOf(prepStart) >= beginOf(strip)) &&
      !strips.some((other) => other.mould === strip.mould && beginOf(other) > beginOf(strip)),
  );

/**
 * What may be left out of what is kept in a session, the least harm first: nothing, one piece that stays in its mould, one
 * batch or packing, or several of them, of each the last to begin first.
 *
 * Example: of one batch of one piece, stripped in the same session, nothing, then the strip, then the batch.
 */
export const leaveOut = (keep: Keep): LeftOut[] => {
  const tasks = lastFirst([...keep.batches, ...(keep.packs ?? [])]);
  const several = tasks.slice(1).map((_, i) => tasks.slice(0, i + 2));
  const single = [...lastFirst(lastStrips(keep)), ...tasks].map((task) => [task]);
  return [[], ...single, ...several].map((out) => new Set(out));
};

/** What is kept less some of it, with what comes of batches that are left out. */
export const lessOut = (keep: Keep, out: LeftOut): KeptLess => {
  const left = keep.batches.filter((batch) => out.has(batch));
  const gone = new Set(left.flatMap(({ pours }) => pours));
  const [lost, pours] = [keep.pours.filter(({ id }) => gone.has(id)), keep.pours.filter(({ id }) => !gone.has(id))];
  const theirs = coatsBefore(keep.coats ?? [], keep.pours, lost);
  // A pour that comes after theirs in the same mould may need their coat.
  const coated = new Set(theirs.map(({ mould }) => mould));
  const others = pours.filter(({ mould }) => coated.has(mould));
  const needed = new Set(coatsBefore(keep.coats ?? [], others, others));
  const coats = theirs.filter((coat) => !needed.has(coat));
  return {
    keep: {
      ...keep,
      batches: keep.batches.filter((batch) => !out.has(batch)),
      pours,
      strips: keep.strips?.filter((one) => !out.has(one) && (one.pour === undefined || !gone.has(one.pour))),
      packs: keep.packs?.filter((pack) => !out.has(pack)),
      coats: keep.coats?.filter((coat) => !coats.includes(coat)),
    },
    left,
  };
};
