import { type FixedPour, readiedFrom } from './fixed-batch.ts';
import { type FixedGround, type FixedMould, fits, take } from './fixed-ground.ts';
import { NEVER, NONE, STRIP } from './problem.ts';

/** Whether the rack has so many spaces all along: it is fullest at the start or when something else is put there. */
const hasRoom = ({ lying, problem }: FixedGround, from: number, until: number, spaces: number): boolean => {
  if (from >= until || spaces === 0 || problem.rackSpaces >= NEVER) return true;
  const beside = lying.filter((x) => x.from < until && x.until > from);
  const usedAt = (t: number) => beside.reduce((n, x) => (x.from <= t && t < x.until ? n + x.spaces : n), spaces);
  return (
    usedAt(from) <= problem.rackSpaces && beside.every((x) => x.from <= from || usedAt(x.from) <= problem.rackSpaces)
  );
};

type Held = Pick<FixedMould, 'held' | 'outAt' | 'curedAt'>;

/** Whether a mould can be stripped of what it holds at just this minute, people and rack allowing. */
export const canStripAt = (ground: FixedGround, mould: Held, start: number, sparing?: Int32Array): boolean => {
  const { stripMinutes, stripCrew, rackSpaces } = ground.problem.castings[mould.held]!;
  const end = start + stripMinutes;
  if (!fits(ground, STRIP, start, stripMinutes, stripCrew, sparing)) return false;
  return hasRoom(ground, end, mould.curedAt, rackSpaces);
};

/**
 * Start of a strip that ends by a minute and finds room to cure: as wanted, else the earliest, out of the way of fixed
 * tasks not looked at yet where that can be; or NONE.
 */
export const stripBefore = (ground: FixedGround, mould: Held, by: number, wanted: number): number => {
  const { problem, ahead } = ground;
  const { from, to, count } = problem.shifts;
  const last = by - problem.castings[mould.held]!.stripMinutes;
  const first = Math.max(mould.outAt, problem.now);
  if (wanted >= first && wanted <= last && canStripAt(ground, mould, wanted, ahead)) return wanted;
  for (const sparing of [ahead, undefined])
    for (let s = 0; s < count && from[s]! <= last; s++)
      for (let start = Math.max(first, from[s]!); start <= last && start < to[s]!; start++)
        if (canStripAt(ground, mould, start, sparing)) return start;
  return NONE;
};

/** What was stripped lies on the rack until it is cured. */
export const lieOnRack = (ground: FixedGround, mould: Held, stripEnd: number): void => {
  if (stripEnd >= mould.curedAt) return;
  const spaces = ground.problem.castings[mould.held]!.rackSpaces;
  ground.lying.push({ from: stripEnd, until: mould.curedAt, spaces });
};

/** Finds and takes the strip that a fixed pour needs first; what speaks against it, or null. */
export const stripFault = (ground: FixedGround, fixed: FixedPour): string | null => {
  const mould = ground.moulds[fixed.mould]!;
  if (mould.held === NONE) return null;
  const { stripMinutes, stripCrew } = ground.problem.castings[mould.held]!;
  fixed.stripFirst = stripBefore(ground, mould, readiedFrom(fixed), ground.stripsFirst.get(fixed) ?? NONE);
  if (fixed.stripFirst === NONE)
    return `mould ${ground.problem.yard.moulds[fixed.mould]!.id} cannot be stripped by then: nobody is free, or the rack is full`;
  take(ground, fixed.stripFirst, stripMinutes, stripCrew);
  lieOnRack(ground, mould, fixed.stripFirst + stripMinutes);
  return null;
};
