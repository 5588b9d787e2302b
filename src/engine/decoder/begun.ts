import type { Begun, PlanBatch } from '../../../shared/plan.ts';
import { type Minute, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import type { BegunWork } from './begun-work.ts';
import { NONE, type Problem } from './problem.ts';

const NOTHING: Begun = { batches: [], pours: [], strips: [], packs: [], preps: [], coats: [] };

/** What a yard file says is under way; empty lists where it says nothing. */
export const begunIn = ({ begun }: Pick<YardFile, 'begun'>): Begun => begun ?? NOTHING;

const placeOf = (list: readonly { id: string }[], id: string): number => list.findIndex((one) => one.id === id);

/** The work under way of a yard, batches apart. */
export const begunWorkOf = (yard: YardFile): BegunWork => {
  const { strips, packs, preps, coats } = begunIn(yard);
  return {
    strips: strips.map(({ mould, stripStart }) => ({
      mould: placeOf(yard.moulds, mould),
      start: minuteOf(stripStart),
    })),
    packs: packs.map(({ order, packStart, packEnd, fromFinished, part }) => ({
      order: placeOf(yard.orders, order),
      start: minuteOf(packStart),
      end: minuteOf(packEnd),
      isPart: part === true,
      lots: fromFinished,
    })),
    preps: preps.map(({ mould, casting, prepStart, prepEnd }) => ({
      mould: placeOf(yard.moulds, mould),
      casting: placeOf(yard.castings, casting),
      start: minuteOf(prepStart),
      end: minuteOf(prepEnd),
    })),
    coats: coats.map(({ mould, start, end }) => ({
      mould: placeOf(yard.moulds, mould),
      start: minuteOf(start),
      end: minuteOf(end),
    })),
  };
};

/** Takes people and, where it is mixing, a mixer for a task under way, as far as there are any. */
const occupy = ({ shifts }: Problem, until: Minute, people: number, mixUntil: Minute = NONE): void => {
  for (let s = 0; s < shifts.count && shifts.from[s]! < until; s++) {
    const base = shifts.offset[s]! - shifts.from[s]!;
    for (let t = shifts.from[s]!; t < Math.min(until, shifts.to[s]!); t++) {
      shifts.people[base + t] = Math.max(0, shifts.people[base + t]! - people);
      if (t < mixUntil) shifts.mixing[base + t] = shifts.mixing[base + t]! + 1;
    }
  }
};

const occupyForBatch = (problem: Problem, { mix, end, mixEnd }: PlanBatch): void => {
  const crew = problem.mixes[placeOf(problem.yard.mixes, mix)]!.crew;
  occupy(problem, minuteOf(end), crew, minuteOf(mixEnd));
};

/** Takes the people and mixers of all that is under way out of the hours of a problem. */
export const occupyForBegun = (problem: Problem): void => {
  for (const batch of begunIn(problem.yard).batches) occupyForBatch(problem, batch);
  for (const { mould, start } of problem.begun.strips) {
    const piece = problem.inMould.find((one) => one.mould === mould)!;
    const { stripMinutes, stripCrew } = problem.castings[piece.casting]!;
    occupy(problem, start + stripMinutes, stripCrew);
  }
  const { packs, preps, coats } = problem.begun;
  for (const { end } of [...packs, ...preps, ...coats]) occupy(problem, end, 1);
};
