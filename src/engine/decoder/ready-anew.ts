import type { Keep } from '../../../shared/plan.ts';
import { coatBefore } from '../book/coat-before.ts';
import { coatMinutes, isCoatDue, setUpMinutes } from '../book/mould-state.ts';
import type { FixedCoat, FixedPour } from './fixed-batch.ts';
import { fixedCoat } from './fixed-coat.ts';
import { type FixedGround, fits } from './fixed-ground.ts';
import type { Pour } from './fixed-pour.ts';
import { NEVER, NONE, PREP } from './problem.ts';

/** How the mould of a pour is made ready for it. */
type Readying = Pick<FixedPour, 'coat' | 'prepStart' | 'prepMinutes'>;

/** From when on a task begins, and by when it is over. */
interface Between {
  from: number;
  by: number;
}

/** Whether somebody is there for a task who is asked for nothing else of what stands. */
const isFree = (ground: FixedGround, start: number, minutes: number): boolean =>
  fits(ground, PREP, start, minutes, 1, ground.ahead);

/** The latest start of so many minutes of setting up or coating between two; NONE where nobody has them. */
const latestStart = (ground: FixedGround, minutes: number, { from, by }: Between): number => {
  const { shifts } = ground.problem;
  for (let s = shifts.count - 1; s >= 0 && shifts.to[s]! >= from + minutes; s--) {
    const first = Math.max(from, shifts.from[s]!);
    for (let start = Math.min(by, shifts.to[s]!) - minutes; start >= first; start--)
      if (isFree(ground, start, minutes)) return start;
  }
  return NONE;
};

/** A start that ends as it was planned where that can be, else the latest; NONE where there is none. */
const startNear = (ground: FixedGround, minutes: number, end: number, between: Between): number => {
  const start = end - minutes;
  const asPlanned = start >= between.from && end <= between.by && isFree(ground, start, minutes);
  return asPlanned ? start : latestStart(ground, minutes, between);
};

/** From when on a mould can be readied: once it is out of use no more, empty and dry. */
const readyFrom = ({ problem, moulds, stripsFirst }: FixedGround, fixed: FixedPour): number => {
  const { freeAt, held, outAt } = moulds[fixed.mould]!;
  if (held === NONE) return Math.max(freeAt, problem.now);
  const strip = Math.max(outAt, stripsFirst.get(fixed) ?? NONE);
  return Math.max(freeAt, problem.now, strip + problem.castings[held]!.stripMinutes);
};

/** The coat that was planned before a pour, or before those in its mould that are gone. */
const coatOf = ({ text, fixed }: Pour, { coats = [] }: Keep, staying: Keep['pours']): FixedCoat | null => {
  if (fixed.coat) return fixed.coat;
  const coat = coatBefore(coats, staying, text);
  return coat ? fixedCoat(coat, fixed.mould) : null;
};

/** The set-up alone, and with a coat before it: first as near as can be to when it was, then as late as can be. */
const setUpsOf = (
  ground: FixedGround,
  { fixed }: Pour,
  lasts: number,
  between: Between,
): Pick<Readying, 'prepStart' | 'prepMinutes'>[] => {
  const near = startNear(ground, lasts, fixed.prepStart + fixed.prepMinutes, between);
  const latest = latestStart(ground, lasts, between);
  return [near, latest].filter((start) => start !== NONE).map((prepStart) => ({ prepStart, prepMinutes: lasts }));
};

/**
 * How the mould of a pour that stands is made ready as the mould stands now, where that is otherwise than it was planned: the
 * pour before it is gone, with its set-up for this casting and its coat, or the mould was mended or cleaned since. Null where nobody
 * has the time for it.
 *
 * `staying` are the pours that stay, as far as they are looked at.
 */
export const readiedAnew = (
  ground: FixedGround,
  pour: Pour,
  batchStart: number,
  { keep, staying }: { keep: Keep; staying: Keep['pours'] },
): Readying | null => {
  const { problem } = ground;
  const { fixed } = pour;
  const [mould, of] = [ground.moulds[fixed.mould]!, problem.moulds[fixed.mould]!];
  const change = of.change[fixed.casting]!;
  if (mould.freeAt >= NEVER || change === NONE) return null;
  const isEmpty = mould.held === NONE;
  if (isEmpty && mould.prepped && mould.setFor === fixed.casting && !fixed.coat)
    return { coat: null, prepStart: batchStart, prepMinutes: 0 };
  const setFor = isEmpty ? mould.setFor : mould.held;
  const isDirty = mould.dirty || !isEmpty;
  const planned = coatOf(pour, keep, staying);
  const isDue = isCoatDue(mould.turnsSinceOil, of.oilEveryTurns);
  const isCoated = isDue || (planned !== null && of.oilEveryTurns < NEVER && mould.turnsSinceOil > 0);
  const changing = setFor === fixed.casting ? 0 : change;
  const lasts = setUpMinutes(problem.castings[fixed.casting]!, changing, isDirty && !isCoated);
  const from = readyFrom(ground, fixed);
  const minutes = coatMinutes(of.oilMinutes, problem.castings[setFor]!, isDirty);
  for (const setUp of setUpsOf(ground, pour, lasts, { from, by: batchStart })) {
    if (!isCoated) return { coat: null, ...setUp };
    const by = setUp.prepStart - of.oilDryMinutes;
    const start = startNear(ground, minutes, planned ? planned.start + planned.minutes : by, { from, by });
    if (start !== NONE) return { coat: { mould: fixed.mould, start, minutes }, ...setUp };
  }
  return null;
};
