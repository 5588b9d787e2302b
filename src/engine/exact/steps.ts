import { coatMinutes, isCoatDue, setUpMinutes, turnsAfterPour } from '../book/mould-state.ts';
import { NEVER, NONE, PACK, PREP, type Problem, STRIP } from '../decoder/problem.ts';
import { goodsOfBatch, thereFrom, usedAfter } from './goods.ts';
import type { Hours } from './hours.ts';
import { choicesFor } from './pieces.ts';
import { type Fill, heldAfter, type MouldNow, type Work } from './work.ts';

/** What steps are taken in: the yard, its hours, and the orders that are to be made. */
export interface Ground {
  problem: Problem;
  hours: Hours;
  orders: readonly number[];
}

const withAt = <T>(list: readonly T[], at: number, by: T): T[] => {
  const copy = list.slice();
  copy[at] = by;
  return copy;
};

/** Empty, and not set up for a pour of this plan: what was set up before may be set up or coated again. */
const isBare = ({ held, prepped, asIs }: MouldNow): boolean => !held && (prepped === NONE || asIs);

/** Set-ups of every bare mould, for each casting that is still wanted (R6). */
function* setUps({ problem, hours }: Ground, work: Work): Generator<Work> {
  for (const [k, mould] of work.moulds.entries()) {
    const { makes, oilEveryTurns } = problem.moulds[k]!;
    if (!isBare(mould) || mould.freeFrom >= NEVER || isCoatDue(mould.turns, oilEveryTurns)) continue;
    for (const { casting, changeMinutes } of makes) {
      if (mould.prepped === casting || work.left[casting]! <= 0) continue;
      const change = mould.setFor === casting ? 0 : changeMinutes;
      const minutes = setUpMinutes(problem.castings[casting]!, change, mould.isDirty);
      const prepStart = hours.start(PREP, minutes, Math.max(work.at, mould.freeFrom));
      if (prepStart >= NEVER) continue;
      const prepEnd = prepStart + minutes;
      const set = { setFor: casting, isDirty: false, prepped: casting, asIs: false, prepStart, prepEnd };
      yield {
        ...work,
        at: prepEnd,
        moulds: withAt(work.moulds, k, { ...mould, ...set }),
        left: withAt(work.left, casting, work.left[casting]! - 1),
      };
    }
  }
}

/** Sealing coats of bare moulds, due or not; of one that is clean and has a coat without a turn they would change nothing. */
function* coats({ problem, hours }: Ground, work: Work): Generator<Work> {
  for (const [k, mould] of work.moulds.entries()) {
    const { oilEveryTurns, oilMinutes, oilDryMinutes } = problem.moulds[k]!;
    if (oilEveryTurns >= NEVER || !isBare(mould) || mould.freeFrom >= NEVER) continue;
    if (mould.turns === 0 && !mould.isDirty) continue;
    const minutes = coatMinutes(oilMinutes, problem.castings[mould.setFor]!, mould.isDirty);
    const start = hours.start(PREP, minutes, Math.max(work.at, mould.freeFrom));
    if (start >= NEVER) continue;
    const end = start + minutes;
    const coated = { isDirty: false, prepped: NONE, asIs: false, turns: 0, freeFrom: end + oilDryMinutes };
    yield {
      ...work,
      at: end,
      moulds: withAt(work.moulds, k, { ...mould, ...coated }),
      done: { before: work.done, task: { kind: 'coat', mould: k, start, end } },
    };
  }
}

/** Every order in which some moulds of one mix can be filled, one mould at the least. */
function* rowsOf(moulds: readonly number[], mixOf: (mould: number) => number): Generator<number[]> {
  for (const one of moulds) {
    yield [one];
    const others = moulds.filter((k) => k !== one && mixOf(k) === mixOf(one));
    for (const more of rowsOf(others, mixOf)) yield [one, ...more];
  }
}

const fillsOf = ({ problem }: Ground, work: Work, row: readonly number[], start: number, mixEnd: number): Fill[] => {
  let at = mixEnd;
  return row.map((mould) => {
    const { prepped, asIs, prepStart, prepEnd } = work.moulds[mould]!;
    const fillStart = at;
    at += problem.castings[prepped]!.fillMinutes;
    const setUp = asIs ? { prepStart: start, prepEnd: start } : { prepStart, prepEnd };
    return { mould, casting: prepped, ...setUp, fillStart, fillEnd: at };
  });
};

const filledBy = ({ problem }: Ground, work: Work, fills: readonly Fill[], start: number): MouldNow[] => {
  const moulds = work.moulds.slice();
  fills.forEach(({ mould, casting, fillEnd }, i) => {
    const before = moulds[mould]!;
    const held = heldAfter(problem, casting, fillEnd, work.pours + i, start);
    const empty = { setFor: casting, isDirty: false, prepped: NONE, asIs: false, prepStart: NONE, prepEnd: NONE };
    moulds[mould] = { ...before, ...empty, turns: turnsAfterPour(before.turns, false), held };
  });
  return moulds;
};

/** Pours of moulds that were set up before the plan begins count when they are filled, all others when they are set up. */
const leftAfter = (work: Work, row: readonly number[]): number[] => {
  const left = work.left.slice();
  for (const k of row) {
    const { asIs, prepped } = work.moulds[k]!;
    if (asIs) left[prepped] = left[prepped]! - 1;
  }
  return left;
};

/** Minutes from which a batch may be for one more order: none, and the first days of orders that are still to come (R11). */
const firstDays = ({ problem, orders }: Ground, from: number): number[] => [
  from,
  ...new Set(orders.map((o) => problem.orders[o]!.from).filter((day) => day > from)),
];

/** Batches of any of the moulds that are set up, in any order of filling, also later for who may not have an earlier one. */
function* batches(ground: Ground, work: Work): Generator<Work> {
  const { problem, hours } = ground;
  const ready = work.moulds.flatMap(({ prepped }, k) => (prepped === NONE ? [] : [k]));
  const mixOf = (k: number) => problem.castings[work.moulds[k]!.prepped]!.mix;
  for (const row of rowsOf(ready, mixOf)) {
    const left = leftAfter(work, row);
    const castings = row.map((k) => work.moulds[k]!.prepped);
    const goods = goodsOfBatch(problem, castings);
    if (!goods || left.some((n) => n < 0)) continue;
    const mix = mixOf(row[0]!);
    const { mixMinutes, washMinutes } = problem.mixes[mix]!;
    const fill = castings.reduce((n, c) => n + problem.castings[c]!.fillMinutes, 0);
    const free = row.reduce((t, k) => Math.max(t, work.moulds[k]!.freeFrom), work.at);
    const starts = new Set<number>();
    for (const from of firstDays(ground, thereFrom(problem, work.used, goods, free)))
      starts.add(hours.batch(mix, fill, from));
    for (const start of starts) {
      if (start >= NEVER) continue;
      const mixEnd = start + mixMinutes;
      const fills = fillsOf(ground, work, row, start, mixEnd);
      const end = mixEnd + fill + washMinutes;
      yield {
        ...work,
        at: end,
        moulds: filledBy(ground, work, fills, start),
        used: usedAfter(problem, work.used, goods, start),
        pours: work.pours + row.length,
        left,
        done: { before: work.done, task: { kind: 'batch', mix, start, mixEnd, end, fills } },
      };
    }
  }
}

/** Strips of what is in moulds, as soon as it may come out (R7). */
function* strips({ problem, hours }: Ground, work: Work): Generator<Work> {
  for (const [k, mould] of work.moulds.entries()) {
    if (!mould.held) continue;
    const { casting, pour, aside, begunAt, ...held } = mould.held;
    const { stripMinutes, stripCrew } = problem.castings[casting]!;
    const start = hours.start(STRIP, stripMinutes, Math.max(work.at, held.outAt), stripCrew);
    if (start >= NEVER) continue;
    const end = start + stripMinutes;
    const readyAt = Math.max(end, held.curedAt);
    yield {
      ...work,
      at: end,
      moulds: withAt(work.moulds, k, { ...mould, held: null, isDirty: true }),
      pieces: [...work.pieces, { casting, readyAt, aside, begunAt, usedBy: NONE }],
      done: { before: work.done, task: { kind: 'strip', mould: k, pour, start, end, readyAt } },
    };
  }
}

/** Packings of any order with any of the pieces that are out of their moulds (R11). */
function* packings({ problem, hours, orders }: Ground, work: Work): Generator<Work> {
  for (const o of orders) {
    const { packMinutes, from, parts } = problem.orders[o]!;
    if (packMinutes === 0 || work.packedAt[o] !== NONE) continue;
    for (const chosen of choicesFor(problem, work.pieces, o)) {
      const ready = chosen.reduce((t, i) => Math.max(t, work.pieces[i]!.readyAt), Math.max(work.at, from));
      const start = hours.start(PACK, packMinutes, thereFrom(problem, work.used, parts, ready));
      const end = start + packMinutes;
      if (end >= problem.horizonEnd) continue;
      yield {
        ...work,
        at: end,
        pieces: work.pieces.map((piece, i) => (chosen.includes(i) ? { ...piece, usedBy: o } : piece)),
        used: usedAfter(problem, work.used, parts, start),
        packedAt: withAt(work.packedAt, o, end),
        done: { before: work.done, task: { kind: 'pack', order: o, start, end } },
      };
    }
  }
}

/**
 * Every task that the one person could do next, each at the first minute at which it may begin. To begin later is never
 * better, but for a first day of an order: whatever may begin at a minute may begin as soon or sooner after a task that ended
 * sooner.
 */
export function* stepsFrom(ground: Ground, work: Work): Generator<Work> {
  yield* strips(ground, work);
  yield* packings(ground, work);
  yield* batches(ground, work);
  yield* setUps(ground, work);
  yield* coats(ground, work);
}
