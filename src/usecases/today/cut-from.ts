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

/** What the plan cuts pieces of one length from: offcuts, each with its length by then, and whole sticks. */
export const cutFrom = (cutting: Cutting, { material, lengthMm, cutFor }: Pieces): CutFrom[] => {
  const found = new Map<string | null, CutFrom>();
  for (const stick of cutting.plan.sticks) {
    if (stick.material !== material) continue;
    const own = stick.cuts.filter((cut) => cut.for === cutFor && cut.lengthMm === lengthMm);
    const pieces = own.reduce((sum, { count }) => sum + count, 0);
    if (pieces === 0) continue;
    const then = lengthThen(stick, cutFor, cutting);
    const offcut = then === null ? null : lengthText(then, cutting.system);
    const { count = 0, sticks = 0 } = found.get(offcut) ?? {};
    found.set(offcut, { offcut, count: count + pieces, sticks: sticks + 1 });
  }
  return [...found.values()];
};
