import type { PlanFile } from '../../../shared/plan.ts';
import { type Minute, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';

/** Pieces that cure on the rack: from when, until when, half-open, and how many spaces they take. */
interface Lying {
  from: Minute;
  until: Minute;
  spaces: number;
}

const lyingIn = (plan: PlanFile, yard: YardFile): Lying[] => {
  const spaces = new Map(yard.castings.map(({ id, rackSpaces }) => [id, rackSpaces]));
  const inMould = new Map(yard.inMould.map(({ mould, casting }) => [mould, casting]));
  const now = minuteOf(yard.yard.now);
  const stripped = [
    ...plan.strips.map((strip) => ({ ...strip, casting: inMould.get(strip.mould) ?? '' })),
    ...plan.pours,
  ];
  return [
    ...yard.finished.flatMap(({ casting, count, readyAt }) =>
      readyAt === undefined
        ? []
        : [{ from: now, until: minuteOf(readyAt), spaces: count * (spaces.get(casting) ?? 0) }],
    ),
    ...stripped.map(({ casting, stripEnd, pieceReadyAt }) => ({
      ...{ from: minuteOf(stripEnd), until: minuteOf(pieceReadyAt), spaces: spaces.get(casting) ?? 0 },
    })),
  ].filter(({ from, until }) => until > from);
};

/**
 * Whether all that cures by a plan has room on the rack (R8). A yard without a limit always has.
 *
 * Example: a rack of 2 spaces holds two pieces until 12:00 and one from 12:00 on, but no third one at 11:59.
 */
export const rackHolds = (plan: PlanFile, yard: YardFile): boolean => {
  const { rackSpaces } = yard.yard;
  if (rackSpaces === undefined) return true;
  const changes = lyingIn(plan, yard).flatMap(({ from, until, spaces }) => [
    { at: from, spaces },
    { at: until, spaces: -spaces },
  ]);
  changes.sort((a, b) => a.at - b.at || a.spaces - b.spaces);
  let taken = 0;
  return changes.every((change) => {
    taken += change.spaces;
    return taken <= rackSpaces;
  });
};
