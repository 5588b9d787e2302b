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

/** The sticks of a plan by what is cut from them, and when that is needed. */
interface SticksOfPlan {
  /** By material, and the batch or order that is cut for; in the order of the plan. */
  byUse: ReadonlyMap<string, readonly PlanStick[]>;
  neededAt: ReadonlyMap<string, Minute>;
}

const useOf = (material: string, cutFor: string): string => JSON.stringify([material, cutFor]);

/** What was found of each plan: a long one has thousands of sticks, and a session hundreds of set-ups that ask for theirs. */
const known = new WeakMap<PlanFile, SticksOfPlan>();

const sticksOf = (plan: PlanFile): SticksOfPlan => {
  const before = known.get(plan);
  if (before) return before;
  const byUse = new Map<string, PlanStick[]>();
  for (const stick of plan.sticks)
    for (const use of new Set(stick.cuts.map((cut) => useOf(stick.material, cut.for))))
      byUse
        .set(use, byUse.get(use) ?? [])
        .get(use)!
        .push(stick);
  const neededAt = new Map([
    ...plan.batches.map(({ id, start }): [string, Minute] => [id, minuteOf(start)]),
    ...plan.orders.map(({ id, packStart, completesAt }): [string, Minute] => [id, minuteOf(packStart ?? completesAt)]),
  ]);
  const found = { byUse, neededAt };
  known.set(plan, found);
  return found;
};

/** How long a stick is by the time it is cut for something, mm; null while it is a whole one. */
const lengthThen = (stick: PlanStick, cutFor: string, { plan, yard }: Cutting): number | null => {
  const { neededAt } = sticksOf(plan);
  const at = neededAt.get(cutFor) ?? 0;
  const before = stick.cuts.filter((cut) => (neededAt.get(cut.for) ?? 0) < at);
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
  (sticksOf(cutting.plan).byUse.get(useOf(material, cutFor)) ?? []).flatMap((stick): StickCut[] => {
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
