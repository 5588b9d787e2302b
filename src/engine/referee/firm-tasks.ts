import {
  type KeptPack,
  type KeptPrep,
  type KeptStrip,
  type PlanBatch,
  type PlanCoat,
  type PlanFile,
  type PlanPour,
  spellsOf,
} from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';

/** A plan beside the yard file that says what of it had to stay. */
export interface Planned {
  yard: YardFile;
  plan: PlanFile;
}

/** What must not change of a fixed pour; what it is for and when it is stripped may. */
const fixedPart = (pour: PlanPour): string =>
  [pour.mould, pour.casting, ...[pour.prepStart, pour.prepEnd, pour.fillStart, pour.fillEnd].map(minuteOf)].join();

const fixedPours = (pours: PlanPour[], batch: string): string =>
  pours
    .filter((x) => x.batch === batch)
    .map(fixedPart)
    .sort()
    .join('\n');

const isSame = (a: string | undefined, b: string): boolean => a !== undefined && minuteOf(a) === minuteOf(b);

/** True when a batch is in the plan with its mix, its start and its pours, of which `pours` has all there were. */
export const hasBatch = ({ plan }: Planned, was: PlanBatch, pours: PlanPour[]): boolean => {
  const is = plan.batches.find((x) => x.id === was.id);
  if (!is || is.mix !== was.mix || !isSame(is.start, was.start)) return false;
  return fixedPours(plan.pours, was.id) === fixedPours(pours, was.id);
};

/** The strip in the plan that a firm one speaks of: of a pour that had to stay, or of the piece in the mould now. */
const stripOf = ({ yard, plan }: Planned, was: KeptStrip): { stripStart: string; stripEnd: string } | undefined => {
  if (was.pour === undefined) return plan.strips.find((x) => x.mould === was.mould);
  const pour = [...(yard.keep?.pours ?? []), ...(yard.begun?.pours ?? [])].find((x) => x.id === was.pour);
  return pour && plan.pours.find((x) => x.batch === pour.batch && x.mould === was.mould);
};

/** True when a piece comes out of its mould as it was to. */
export const hasStrip = (planned: Planned, was: KeptStrip): boolean => {
  const is = stripOf(planned, was);
  return isSame(is?.stripStart, was.stripStart) && isSame(is?.stripEnd, was.stripEnd);
};

/** True when an order, or this spell of it, is packed as it was to be. */
export const hasPack = ({ plan }: Planned, was: KeptPack): boolean =>
  plan.orders
    .filter((x) => x.id === was.order)
    .some((x) => spellsOf(x).some((is) => isSame(is.packStart, was.packStart) && isSame(is.packEnd, was.packEnd)));

/** True when some pour of that casting has the set-up as its own. */
export const hasPrep = ({ plan }: Planned, was: KeptPrep): boolean =>
  plan.pours.some(
    (x) =>
      x.mould === was.mould &&
      x.casting === was.casting &&
      isSame(x.prepStart, was.prepStart) &&
      isSame(x.prepEnd, was.prepEnd),
  );

/** True when a mould is coated as it was to be. */
export const hasCoat = ({ plan }: Planned, was: PlanCoat): boolean =>
  plan.coats.some((x) => x.mould === was.mould && isSame(x.start, was.start) && isSame(x.end, was.end));
