import type { PlanPour } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import { isCoatDue, setUpMinutes } from '../book/mould-state.ts';
import { type FixedPour, readiedFrom } from './fixed-batch.ts';
import { coatFault } from './fixed-coat.ts';
import { type FixedGround, fits } from './fixed-ground.ts';
import { NEVER, NONE, PREP } from './problem.ts';

/** A fixed pour as the yard file has it, as it will be placed. */
export interface Pour {
  text: PlanPour;
  fixed: FixedPour;
}

/** What speaks against a fixed pour in its mould, the strip it needs first apart; or null. */
export const pourFault = (ground: FixedGround, { text, fixed }: Pour, batchStart: number): string | null => {
  const { problem } = ground;
  const first = readiedFrom(fixed);
  const coated = fixed.coat !== null;
  const mould = ground.moulds[fixed.mould]!;
  const of = problem.moulds[fixed.mould]!;
  const name = problem.yard.moulds[fixed.mould]!.id;
  const change = of.change[fixed.casting]!;
  if (mould.freeAt >= NEVER) return `mould ${name} is out of use`;
  if (change === NONE) return `mould ${name} no longer makes it`;
  if (first < problem.now) return 'its set-up would have begun already';
  if (mould.held !== NONE && mould.outAt + problem.castings[mould.held]!.stripMinutes > first)
    return `mould ${name} is not empty by then`;
  if (mould.freeAt > first) return `mould ${name} is not free by then`;
  const asIs = mould.prepped && mould.held === NONE && mould.setFor === fixed.casting && !coated;
  if (!asIs && isCoatDue(mould.turnsSinceOil, of.oilEveryTurns) && !coated)
    return `mould ${name} is due for a sealing coat`;
  const dirty = !coated && (mould.dirty || mould.held !== NONE);
  const setFor = mould.held === NONE ? mould.setFor : mould.held;
  const changing = setFor === fixed.casting ? 0 : change;
  const lasts = setUpMinutes(problem.castings[fixed.casting]!, changing, dirty);
  if (fixed.prepMinutes !== (asIs ? 0 : lasts)) return `setting up mould ${name} takes another time now`;
  if (minuteOf(text.prepEnd) > batchStart) return `mould ${name} is not ready by then`;
  const fault = fixed.coat && coatFault(ground, fixed.coat, fixed.prepStart);
  if (fault) return fault;
  return fits(ground, PREP, fixed.prepStart, fixed.prepMinutes, 1)
    ? null
    : `nobody is free to set up mould ${name} then`;
};
