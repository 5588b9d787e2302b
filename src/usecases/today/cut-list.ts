import type { PlanStick } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { restOf } from '../../engine/cut/offcuts.ts';
import { lengthText } from '../../engine/units/length.ts';

/** One stick, and what is cut from it. */
export interface StickFacts {
  name: string;
  /** How long it is before; in the yard's units. */
  length: string;
  whole: boolean;
  cuts: readonly { length: string; count: number }[];
}

type Cuts = PlanStick['cuts'];

/** Equal lengths counted together, the longest first: in that order a stick is best cut. */
const byLength = (cuts: Cuts, system: UnitSystem): StickFacts['cuts'] => {
  const counts = new Map<number, number>();
  for (const { lengthMm, count } of cuts) counts.set(lengthMm, (counts.get(lengthMm) ?? 0) + count);
  return [...counts]
    .sort(([a], [b]) => b - a)
    .map(([lengthMm, count]) => ({ length: lengthText(lengthMm, system), count }));
};

/**
 * What is cut for some batches and orders, stick by stick, as the plan has it: `cutFor` are their ids, `done` those that come
 * before them. Sticks from which nothing is cut for them are left out.
 */
export const cutList = (
  sticks: readonly PlanStick[],
  { materials }: Pick<YardFile, 'materials'>,
  { cutFor, done }: { cutFor: ReadonlySet<string>; done: ReadonlySet<string> },
  system: UnitSystem,
): StickFacts[] =>
  [...sticks]
    .sort((a, b) => minuteOf(a.openedAt) - minuteOf(b.openedAt))
    .flatMap((stick) => {
      const material = materials.find(({ id }) => id === stick.material);
      const cuts = stick.cuts.filter((cut) => cutFor.has(cut.for));
      if (!material || cuts.length === 0) return [];
      const before = stick.cuts.filter((cut) => done.has(cut.for));
      const full = stick.offcutMm ?? material.stickMm ?? 0;
      const length = before.length === 0 ? full : restOf(full, material.kerfMm, before);
      const whole = stick.offcutMm === undefined && before.length === 0;
      return [{ name: material.name, length: lengthText(length, system), whole, cuts: byLength(cuts, system) }];
    });
