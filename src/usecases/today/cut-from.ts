import type { PlanFile, PlanStick } from '../../../shared/plan.ts';
import { type Minute, minuteOf } from '../../../shared/time.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { restOf } from '../../engine/cut/offcuts.ts';
import { lengthText } from '../../engine/units/length.ts';
import type { CutFrom } from './session-step.ts';

interface Cutting {
  plan: PlanFile;
  yard: YardFile;
  system: UnitSystem;
}

/** Pieces of one length for a batch or an order. */
interface Pieces {
  material: string;
  lengthMm: number;
  cutFor: string;
}

const neededAt = ({ batches, orders }: PlanFile): ReadonlyMap<string, Minute> =>
  new Map([
    ...batches.map(({ id, start }): [string, Minute] => [id, minuteOf(start)]),
    ...orders.map(({ id, packStart, completesAt }): [string, Minute] => [id, minuteOf(packStart ?? completesAt)]),
  ]);

/** How long a stick is by the time it is cut for something, mm; null while it is a whole one. */
const lengthThen = (stick: PlanStick, cutFor: string, { plan, yard }: Cutting): number | null => {
  const needed = neededAt(plan);
  const at = needed.get(cutFor) ?? 0;
  const before = stick.cuts.filter((cut) => (needed.get(cut.for) ?? 0) < at);
  const material = yard.materials.find(({ id }) => id === stick.material);
  if (before.length === 0 || !material) return stick.offcutMm ?? null;
  return restOf(stick.offcutMm ?? material.stickMm ?? 0, material.kerfMm, before);
};

/** One stick, and how many pieces of the length are cut of it; an offcut by its length then, null for a whole one. */
interface StickCut {
  offcut: string | null;
  pieces: number;
}

const sticksCut = (cutting: Cutting, { material, lengthMm, cutFor }: Pieces): StickCut[] =>
  cutting.plan.sticks.flatMap((stick): StickCut[] => {
    if (stick.material !== material) return [];
    const own = stick.cuts.filter((cut) => cut.for === cutFor && cut.lengthMm === lengthMm);
    const pieces = own.reduce((sum, { count }) => sum + count, 0);
    if (pieces === 0) return [];
    const then = lengthThen(stick, cutFor, cutting);
    return [{ offcut: then === null ? null : lengthText(then, cutting.system), pieces }];
  });

/** So many pieces after so many others, stick after stick. */
const partOf = (sticks: readonly StickCut[], { before, count }: { before: number; count: number }): StickCut[] => {
  let [skipped, left] = [before, count];
  return sticks.flatMap(({ offcut, pieces }) => {
    const others = Math.min(skipped, pieces);
    const own = Math.min(left, pieces - others);
    skipped -= others;
    left -= own;
    return own > 0 ? [{ offcut, pieces: own }] : [];
  });
};

/**
 * What the plan cuts pieces of one length from: offcuts, each with its length by then, and whole sticks. `part`: only so many
 * of them, after so many that are cut before.
 */
export const cutFrom = (cutting: Cutting, pieces: Pieces, part?: { before: number; count: number }): CutFrom[] => {
  const all = sticksCut(cutting, pieces);
  const found = new Map<string | null, CutFrom>();
  for (const { offcut, pieces: own } of part ? partOf(all, part) : all) {
    const { count = 0, sticks = 0 } = found.get(offcut) ?? {};
    found.set(offcut, { offcut, count: count + own, sticks: sticks + 1 });
  }
  return [...found.values()];
};
