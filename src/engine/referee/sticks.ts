import type { PlanStick } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import { type Finding, finder, TOLERANCE } from './finding.ts';
import type { Ground } from './ground.ts';
import type { CutUse } from './uses.ts';

type Found = (message: string) => void;

const keyOf = (material: string, lengthMm: number, to: string): string => JSON.stringify([material, lengthMm, to]);

const checkRoom = (ground: Ground, stick: PlanStick, found: Found): void => {
  const { stickMm = 0, kerfMm } = ground.materials.get(stick.material)!;
  const there = stick.offcutMm ?? stickMm;
  const count = stick.cuts.reduce((sum, x) => sum + x.count, 0);
  const mm = stick.cuts.reduce((sum, x) => sum + x.count * x.lengthMm, 0) + (count - 1) * kerfMm;
  if (mm > there + TOLERANCE) found(`${mm} mm are cut from a stick of ${stick.material} of ${there} mm`);
};

/** Every offcut of the yard is cut once at most. */
const checkOffcuts = ({ yard, plan }: Ground, found: Found): void => {
  for (const { id, offcuts = [] } of yard.materials) {
    const left = new Map<number, number>();
    for (const { lengthMm, count } of offcuts) left.set(lengthMm, (left.get(lengthMm) ?? 0) + count);
    for (const { material, offcutMm } of plan.sticks) {
      if (material !== id || offcutMm === undefined) continue;
      const there = left.get(offcutMm) ?? 0;
      if (there === 0) found(`an offcut of ${id} of ${offcutMm} mm is cut that is not there`);
      left.set(offcutMm, there - 1);
    }
  }
};

/**
 * R10, sticks and offcuts: each is there once and holds its cuts and the kerfs between them, every cut that is used is on
 * one, none is cut for nothing, and none is opened after it is used.
 *
 * Example: two cuts of 1500 from a stick of 3000 with a kerf of 3 are found: 3003 mm.
 */
export const checkSticks = (ground: Ground, cuts: CutUse[]): Finding[] => {
  const findings: Finding[] = [];
  const found = finder(findings, 'R10');
  const wanted = new Map<string, { count: number; firstAt: number }>();
  for (const x of cuts) {
    const key = keyOf(x.material, x.lengthMm, x.for);
    const sum = wanted.get(key) ?? { count: 0, firstAt: x.at };
    wanted.set(key, { count: sum.count + x.count, firstAt: Math.min(sum.firstAt, x.at) });
  }
  checkOffcuts(ground, found);
  for (const stick of ground.plan.sticks) {
    checkRoom(ground, stick, found);
    for (const x of stick.cuts) {
      const sum = wanted.get(keyOf(stick.material, x.lengthMm, x.for));
      if (!sum) {
        found(`${x.lengthMm} mm of ${stick.material} are cut for ${x.for}, which needs none`);
        continue;
      }
      sum.count -= x.count;
      if (minuteOf(stick.openedAt) > sum.firstAt)
        found(`a stick of ${stick.material} is opened after ${x.for} needs it`);
    }
  }
  for (const [key, { count }] of wanted)
    if (count !== 0) found(`${count > 0 ? `${count} cuts are missing` : `${-count} cuts too many`} of ${key}`);
  return findings;
};
