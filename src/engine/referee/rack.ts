import { minuteOf } from '../../../shared/time.ts';
import { type Finding, finder } from './finding.ts';
import type { Ground } from './ground.ts';
import { mostAtOnce } from './most-at-once.ts';

/**
 * R8: pieces on the rack from being stripped until they are ready, and finished ones until they are, never take more room
 * than there is.
 *
 * Example: with 3 spaces, four pieces stripped on one day and ready the next are found: "4 spaces are taken of 3".
 */
export const checkRack = (ground: Ground): Finding[] => {
  const { rackSpaces } = ground.yard.yard;
  const findings: Finding[] = [];
  if (rackSpaces === undefined) return findings;
  const curing = [...ground.pours.filter((x) => !x.stays), ...ground.strips.values()].map((x) => ({
    from: x.stripEnd,
    to: x.readyAt,
    amount: x.casting.rackSpaces,
    given: 'pour' in x ? false : x.underWay,
  }));
  const finished = ground.yard.finished.flatMap((x) =>
    x.readyAt === undefined
      ? []
      : [
          {
            from: ground.now,
            to: minuteOf(x.readyAt),
            amount: x.count * ground.castings.get(x.casting)!.rackSpaces,
            given: true,
          },
        ],
  );
  const taken = mostAtOnce([...curing, ...finished]);
  if (taken > rackSpaces) finder(findings, 'R8')(`${taken} spaces are taken of ${rackSpaces}`);
  return findings;
};
