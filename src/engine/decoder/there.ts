import { curedAt, outAt } from '../book/curing-times.ts';
import { type CompiledLot, NEVER, NONE, PACK, type PiecesThere, type Problem, type Shifts, STRIP } from './problem.ts';

/** First shift that is not over by a minute and allows a kind of task; one more than there are where none does. */
const shiftFor = ({ count, to, offset, allow }: Shifts, kind: number, minute: number): number => {
  for (let s = 0; s < count; s++) {
    if (to[s]! <= minute) continue;
    for (let i = offset[s]!; i < offset[s + 1]!; i++) if (allow[i]! & kind) return s;
  }
  return count;
};

type Known = Pick<Problem, 'calendar' | 'handover' | 'shifts' | 'today' | 'horizonEnd'>;

const handoverDay = ({ handover, today }: Known, day: number): number => handover[day - today] ?? NEVER;

/** By when orders are handed over that wait for pieces ready at a minute. */
export const lotDays = (known: Known, readyAt: number): Pick<CompiledLot, 'goodOn' | 'packedOn'> => {
  if (readyAt >= known.horizonEnd) return { goodOn: NEVER, packedOn: NEVER };
  const goodOn = handoverDay(known, known.calendar.dayOf(readyAt));
  const shift = shiftFor(known.shifts, PACK, readyAt);
  return { goodOn, packedOn: shift < known.shifts.count ? handoverDay(known, known.shifts.day[shift]!) : NEVER };
};

const pieceReadyAt = ({ shifts, mixes, castings }: Problem, casting: number, filledAt: number): number => {
  const mix = mixes[castings[casting]!.mix]!;
  const out = outAt(mix, filledAt);
  const shift = shiftFor(shifts, STRIP, out);
  return shift < shifts.count ? Math.max(out, shifts.from[shift]!, curedAt(mix, filledAt)) : NEVER;
};

/** What is there of each casting when planning begins; pieces of batches under way are dealt as pours. */
export const piecesThere = (problem: Problem): PiecesThere => {
  const byCasting: PiecesThere['byCasting'] = problem.castings.map(() => []);
  problem.finished.forEach(({ casting, readyAt }, lot) => {
    byCasting[casting]!.push({ lot, piece: NONE, readyAt });
  });
  problem.inMould.forEach(({ casting, filledAt, isBegun }, piece) => {
    if (!isBegun) byCasting[casting]!.push({ lot: NONE, piece, readyAt: pieceReadyAt(problem, casting, filledAt) });
  });
  for (const list of byCasting) list.sort((a, b) => a.readyAt - b.readyAt);
  const late = problem.finished.flatMap(({ readyAt }, i) => (readyAt > problem.now ? [i] : []));
  return { byCasting, lateLots: late.sort((a, b) => problem.finished[a]!.readyAt - problem.finished[b]!.readyAt) };
};
