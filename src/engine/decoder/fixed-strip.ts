import type { KeptPour } from './fixed.ts';
import { fits, type MouldThen, type Then, take } from './fixed-ground.ts';
import { NONE, STRIP } from './problem.ts';

/** Whether the rack has so many spaces all along: it is fullest at the start or when something else is put there. */
const hasRoom = ({ lying, problem }: Then, from: number, until: number, spaces: number): boolean => {
  if (from >= until || spaces === 0) return true;
  const usedAt = (t: number) => lying.reduce((n, x) => (x.from <= t && t < x.until ? n + x.spaces : n), spaces);
  const times = [from, ...lying.flatMap((x) => (x.from > from && x.from < until ? [x.from] : []))];
  return times.every((t) => usedAt(t) <= problem.rackSpaces);
};

const canStripAt = (then: Then, mould: MouldThen, start: number, sparing?: Int32Array): boolean => {
  const { stripMinutes, stripCrew, rackSpaces } = then.problem.castings[mould.held]!;
  const end = start + stripMinutes;
  if (!fits(then, STRIP, start, stripMinutes, stripCrew, sparing)) return false;
  return hasRoom(then, end, mould.curedAt, rackSpaces);
};

/** Start of a strip that ends by a minute and finds room to cure: when it was planned, else the earliest; or NONE. */
const stripBefore = (then: Then, mould: MouldThen, by: number): number => {
  const { problem, ahead } = then;
  const { from, to, count } = problem.shifts;
  const last = by - problem.castings[mould.held]!.stripMinutes;
  const first = Math.max(mould.outAt, problem.now);
  if (mould.stripAt >= first && mould.stripAt <= last && canStripAt(then, mould, mould.stripAt, ahead))
    return mould.stripAt;
  for (const sparing of [ahead, undefined])
    for (let s = 0; s < count && from[s]! <= last; s++)
      for (let start = Math.max(first, from[s]!); start <= last && start < to[s]!; start++)
        if (canStripAt(then, mould, start, sparing)) return start;
  return NONE;
};

/** Finds and takes the strip that a firm pour needs first; what speaks against it, or null. */
export const stripFault = (then: Then, kept: KeptPour): string | null => {
  const mould = then.moulds[kept.mould]!;
  if (mould.held === NONE) return null;
  const { stripMinutes, stripCrew, rackSpaces } = then.problem.castings[mould.held]!;
  kept.stripFirst = stripBefore(then, mould, kept.prepStart);
  if (kept.stripFirst === NONE)
    return `mould ${then.problem.yard.moulds[kept.mould]!.id} cannot be stripped by then: nobody is free, or the rack is full`;
  take(then, kept.stripFirst, stripMinutes, stripCrew);
  const end = kept.stripFirst + stripMinutes;
  if (end >= mould.curedAt) return null;
  then.lying.push({ from: end, until: mould.curedAt, spaces: rackSpaces });
  Object.assign(kept, { rackUntil: mould.curedAt, rackSpaces });
  return null;
};
