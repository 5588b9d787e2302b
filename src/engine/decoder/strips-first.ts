import { curedAt, outAt } from '../book/curing-times.ts';
import { type FixedBatch, type FixedPour, readiedFrom } from './fixed-batch.ts';
import { backTo, type FixedGround, type FixedMould, markOf, take } from './fixed-ground.ts';
import { lieOnRack, stripBefore } from './fixed-strip.ts';
import { NONE, type Problem } from './problem.ts';

/** A strip that a fixed pour needs before its mould is set up, and the minute it would best start; NONE where any will do. */
interface FirstStrip {
  pour: FixedPour;
  holds: Pick<FixedMould, 'held' | 'outAt' | 'curedAt'>;
  wanted: number;
}

/** What a fixed pour leaves in its mould. */
const leftBy = (problem: Problem, pour: FixedPour): FirstStrip['holds'] => {
  const casting = problem.castings[pour.casting]!;
  const filled = pour.fillStart + casting.fillMinutes;
  const mix = problem.mixes[casting.mix]!;
  return { held: pour.casting, outAt: outAt(mix, filled), curedAt: curedAt(mix, filled) };
};

/** The strips that fixed pours need first, if all of them stay: of what is in moulds now, and of one another. */
const firstStrips = ({ problem, moulds, stripNow }: FixedGround, batches: FixedBatch[]): FirstStrip[] => {
  const before = new Map<number, FixedPour>();
  const strips: FirstStrip[] = [];
  for (const pour of batches.flatMap((x) => x.pours)) {
    const last = before.get(pour.mould);
    before.set(pour.mould, pour);
    const holds = last ? leftBy(problem, last) : moulds[pour.mould]!;
    const wanted = last ? last.stripAsPlanned : (stripNow.get(pour.mould) ?? NONE);
    if (holds.held !== NONE) strips.push({ pour, holds, wanted });
  }
  return strips;
};

/** Takes a start for each strip in turn; the first that finds none, or null when all have one. */
const takeInTurn = (ground: FixedGround, strips: FirstStrip[], starts: Map<FixedPour, number>): FirstStrip | null => {
  for (const strip of strips) {
    const { pour, holds, wanted } = strip;
    const start = stripBefore(ground, holds, readiedFrom(pour), wanted);
    if (start === NONE) return strip;
    const { stripMinutes, stripCrew } = ground.problem.castings[holds.held]!;
    take(ground, start, stripMinutes, stripCrew);
    lieOnRack(ground, holds, start + stripMinutes);
    starts.set(pour, start);
  }
  return null;
};

/**
 * Starts for all strips that fixed pours need first, found together: what a yard file keeps does not say when pieces
 * already in moulds were to be stripped, and one stripped as early as can be may take the only minutes of another. The
 * most urgent comes first; one that finds no place comes before all others in the next try, and is left out when it has
 * none even so. The try that places the most counts. `ground` must know all fixed batches as ahead, and is left as it was.
 *
 * Example: one person, two moulds with strips of 8 minutes from 10:13 on, for set-ups at 10:29 and 10:21. The second is
 * stripped at 10:13, the first at 10:21.
 */
export const stripsFirst = (ground: FixedGround, batches: FixedBatch[]): Map<FixedPour, number> => {
  const before = markOf(ground);
  let strips = firstStrips(ground, batches).sort((a, b) => readiedFrom(a.pour) - readiedFrom(b.pour));
  let most = new Map<FixedPour, number>();
  for (let tries = 3 * strips.length; tries > 0; tries--) {
    const starts = new Map<FixedPour, number>();
    const failed = takeInTurn(ground, strips, starts);
    backTo(ground, before);
    if (starts.size > most.size) most = starts;
    if (!failed) break;
    const others = strips.filter((x) => x !== failed);
    strips = failed === strips[0] ? others : [failed, ...others];
  }
  return most;
};

/**
 * A batch does not stay: what its moulds hold before it is then stripped for the next pour in them, when it was to be for
 * this one.
 */
export const passStripsOn = ({ stripsFirst }: FixedGround, gone: FixedBatch, later: readonly FixedBatch[]): void => {
  for (const pour of gone.pours) {
    const next = later.flatMap(({ pours }) => pours).find(({ mould }) => mould === pour.mould);
    const start = stripsFirst.get(pour);
    if (!next) continue;
    if (start === undefined) stripsFirst.delete(next);
    else stripsFirst.set(next, start);
  }
};
