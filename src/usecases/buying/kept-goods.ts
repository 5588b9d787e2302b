import type { KeptLine } from '../../../db/stores/kept-ready-store.ts';
import type { Cut, Material } from '../../../shared/material.ts';
import type { PlanBuy, PlanFile } from '../../../shared/plan.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { goodsOfLines } from '../../engine/book/goods.ts';
import { fewestSticks } from '../../engine/cut/fewest-sticks.ts';
import { countedOnHand } from '../../engine/cut/offcuts.ts';
import type { MaterialUse } from './material-uses.ts';

/** Whole sticks that lengths are cut from; offcuts are not counted on. What is longer than a stick is cut from none. */
const sticksFor = ({ stickMm, kerfMm }: Material, cuts: readonly Cut[]): number => {
  const fitting = cuts.filter(({ lengthMm }) => stickMm !== undefined && lengthMm <= stickMm);
  if (stickMm === undefined || fitting.length === 0) return 0;
  return fewestSticks(
    fitting.map(({ lengthMm }) => lengthMm + kerfMm),
    fitting.map(({ count }) => count),
    stickMm + kerfMm,
  ).sticks;
};

/**
 * What kits that are to stand ready take when they are sold, beside their pieces: pins and other parts, by material in its own
 * unit; of what is cut, whole sticks.
 */
export const goodsOfKept = (
  lines: readonly KeptLine[],
  { kits, materials }: Pick<YardFile, 'kits' | 'materials'>,
): ReadonlyMap<string, number> => {
  const { parts, cuts } = goodsOfLines(
    lines.map(({ count, ...what }) => ({ ...what, quantity: count })),
    { kits },
  );
  return new Map(
    materials.flatMap((material): [string, number][] => {
      const own = cuts.filter((cut) => cut.material === material.id);
      const quantity = (parts.get(material.id) ?? 0) + sticksFor(material, own);
      return quantity > 0 ? [[material.id, quantity]] : [];
    }),
  );
};

interface Planned {
  yard: YardFile;
  plan: PlanFile;
  uses: ReadonlyMap<string, readonly MaterialUse[]>;
}

const sum = (entries: readonly { quantity: number }[]): number =>
  entries.reduce((total, { quantity }) => total + quantity, 0);

/** What is there, on its way or bought by the plan, and taken by nothing that is planned; nor what is always kept. */
const spareOf = (material: Material, { yard, plan, uses }: Planned): number =>
  countedOnHand(material) +
  sum(yard.incoming.filter((one) => one.material === material.id)) +
  sum(plan.buys.filter((one: PlanBuy) => one.material === material.id)) -
  sum(uses.get(material.id) ?? []) -
  material.minimum;

const TOLERANCE = 1e-9;

/** How much has to be bought, in whole packs, so that what kits take that are to stand ready is there beside all that is planned. */
export const shortForKept = (lines: readonly KeptLine[], planned: Planned): ReadonlyMap<string, number> => {
  const goods = goodsOfKept(lines, planned.yard);
  return new Map(
    planned.yard.materials.flatMap((material): [string, number][] => {
      const short = (goods.get(material.id) ?? 0) - Math.max(0, spareOf(material, planned));
      const packs = Math.ceil(short / material.pack - TOLERANCE);
      return goods.has(material.id) && packs > 0 && material.leadDays !== undefined
        ? [[material.id, packs * material.pack]]
        : [];
    }),
  );
};
