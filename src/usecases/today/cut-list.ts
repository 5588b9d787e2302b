import type { PlanStick } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { usableMm } from '../../engine/book/offcuts.ts';
import { restOf } from '../../engine/cut/offcuts.ts';
import { lengthText, shortLengthText } from '../../engine/units/length.ts';

/** A stick to be drawn: its pieces one by one in the order of cutting, mm, each with its figure. */
interface StickBar {
  mm: number;
  kerfMm: number;
  cuts: readonly { mm: number; text: string }[];
}

/** One stick, and what is cut from it. */
export interface StickFacts {
  name: string;
  /** How long it is before; in the yard's units. */
  length: string;
  whole: boolean;
  cuts: readonly { length: string; count: number }[];
  /** What is left of it: kept where some piece can still be cut from it. Null where nothing is. */
  left: { mm: number; length: string; isKept: boolean } | null;
  bar: StickBar;
}

type Cuts = PlanStick['cuts'];

/** So many of a length. */
type Pieces = Pick<Cuts[number], 'lengthMm' | 'count'>;

/** Equal lengths counted together, the longest first: in that order a stick is best cut. */
const byLength = (cuts: Cuts): Pieces[] => {
  const counts = new Map<number, number>();
  for (const { lengthMm, count } of cuts) counts.set(lengthMm, (counts.get(lengthMm) ?? 0) + count);
  return [...counts].sort(([a], [b]) => b - a).map(([lengthMm, count]) => ({ lengthMm, count }));
};

const barOf = (mm: number, kerfMm: number, cuts: readonly Pieces[], system: UnitSystem): StickBar => ({
  ...{ mm, kerfMm },
  cuts: cuts.flatMap(({ lengthMm, count }) =>
    Array.from({ length: count }, () => ({ mm: lengthMm, text: shortLengthText(lengthMm, system) })),
  ),
});

/**
 * What is cut for some batches and orders, stick by stick, as the plan has it: `cutFor` are their ids, `done` those that come
 * before them. Sticks from which nothing is cut for them are left out. What is left is worth keeping by the rule of the
 * stock book.
 */
export const cutList = (
  sticks: readonly PlanStick[],
  yard: Pick<YardFile, 'materials' | 'castings' | 'kits'>,
  { cutFor, done }: { cutFor: ReadonlySet<string>; done: ReadonlySet<string> },
  system: UnitSystem,
): StickFacts[] =>
  [...sticks]
    .sort((a, b) => minuteOf(a.openedAt) - minuteOf(b.openedAt))
    .flatMap((stick) => {
      const material = yard.materials.find(({ id }) => id === stick.material);
      const cuts = stick.cuts.filter((cut) => cutFor.has(cut.for));
      if (!material || cuts.length === 0) return [];
      const before = stick.cuts.filter((cut) => done.has(cut.for));
      const full = stick.offcutMm ?? material.stickMm ?? 0;
      const length = before.length === 0 ? full : restOf(full, material.kerfMm, before);
      const whole = stick.offcutMm === undefined && before.length === 0;
      const own = byLength(cuts);
      const leftMm = restOf(length, material.kerfMm, own);
      return [
        {
          name: material.name,
          length: lengthText(length, system),
          whole,
          cuts: own.map(({ lengthMm, count }) => ({ length: lengthText(lengthMm, system), count })),
          left:
            leftMm === 0
              ? null
              : {
                  ...{ mm: leftMm, length: lengthText(leftMm, system) },
                  isKept: leftMm >= usableMm(yard, material.id),
                },
          bar: barOf(length, material.kerfMm, own, system),
        },
      ];
    });
