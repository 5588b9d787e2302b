import { NEVER, NONE, PACK, PREP, STRIP } from '../decoder/problem.ts';
import type { Ground } from './steps.ts';
import { mayHave, type Work } from './work.ts';

/** When pieces of one casting that are not poured yet can be ready at the very soonest, and since when the person is free. */
interface Pouring {
  casting: number;
  at: number;
  /** Nothing is poured for the order before. */
  from: number;
}

/** When each mould of a casting could be filled again, set up or still to be set up; in rising order. */
const freeMoulds = ({ problem, hours }: Ground, { at, moulds }: Work, casting: number) => {
  const { moulds: makers } = problem.castings[casting]!;
  const free = makers.flatMap((k) => {
    const { held, prepped, freeFrom } = moulds[k]!;
    if (freeFrom >= NEVER) return [];
    if (prepped === casting) return [{ from: Math.max(at, freeFrom), isSetUp: true }];
    if (!held) return [{ from: Math.max(at, freeFrom), isSetUp: false }];
    const { stripMinutes, stripCrew } = problem.castings[held.casting]!;
    const from = hours.end(STRIP, stripMinutes, Math.max(at, held.outAt), stripCrew);
    return from >= NEVER ? [] : [{ from: Math.max(from, freeFrom), isSetUp: false }];
  });
  return free.sort((a, b) => a.from - b.from || Number(b.isSetUp) - Number(a.isSetUp));
};

/** One turn of a mould that is free from a minute on: when it is empty again, and its piece ready. */
const turn = ({ problem, hours }: Ground, pouring: Pouring, from: number, isSetUp: boolean) => {
  const { mix, fillMinutes, prepMinutes } = problem.castings[pouring.casting]!;
  const ready = isSetUp ? from : hours.end(PREP, prepMinutes, from);
  const batch = hours.batch(mix, fillMinutes, Math.max(ready, pouring.from));
  if (batch >= NEVER) return { emptyAt: NEVER, readyAt: NEVER };
  const filled = batch + problem.mixes[mix]!.mixMinutes + fillMinutes;
  return hours.out(pouring.casting, filled, filled);
};

/** Person-minutes before the last of so many fills ends: mixing, filling, setting up what is not set up. */
const labour = ({ problem }: Ground, casting: number, count: number, isSetUp: number): number => {
  const { mix, kg, fillMinutes, prepMinutes } = problem.castings[casting]!;
  const { mixMinutes, mostKg } = problem.mixes[mix]!;
  const batches = Math.ceil((count * kg) / mostKg - 1e-9);
  return Math.max(1, batches) * mixMinutes + count * fillMinutes + Math.max(0, count - isSetUp) * prepMinutes;
};

/**
 * When the 1st, 2nd … of so many pieces still to be poured can be ready: every mould of the casting turns as if the person
 * did nothing else, and no more is filled than can have been worked by then.
 */
const pouredReady = (ground: Ground, work: Work, pouring: Pouring, count: number): number[] => {
  const { hours } = ground;
  const { casting, at } = pouring;
  const moulds = freeMoulds(ground, work, casting);
  const isSetUp = moulds.filter((mould) => mould.isSetUp).length;
  const next = moulds.map(({ from, isSetUp: set }) => turn(ground, pouring, from, set));
  const ready: number[] = [];
  while (ready.length < count) {
    let soonest = 0;
    for (let i = 1; i < next.length; i++) if (next[i]!.readyAt < next[soonest]!.readyAt) soonest = i;
    const made = next[soonest];
    if (!made || made.readyAt >= NEVER) break;
    const worked = hours.workedBy(at, labour(ground, casting, ready.length + 1, isSetUp));
    const by = worked >= NEVER ? NEVER : hours.out(casting, worked, worked).readyAt;
    ready.push(Math.max(made.readyAt, by));
    next[soonest] = turn(ground, pouring, made.emptyAt, false);
  }
  return ready;
};

/** When each piece of a casting that is there, or in a mould, can be ready for an order. */
const readyThere = (
  { problem, hours }: Ground,
  { at, pieces, moulds }: Work,
  order: number,
  casting: number,
): number[] => {
  const ready = pieces.flatMap((p) => (p.casting === casting && mayHave(problem, order, p) ? [p.readyAt] : []));
  for (const { held } of moulds) {
    if (held?.casting !== casting) continue;
    const piece = { ...held, readyAt: 0, usedBy: NONE };
    if (!mayHave(problem, order, piece)) continue;
    const { stripMinutes, stripCrew } = problem.castings[casting]!;
    const out = hours.end(STRIP, stripMinutes, Math.max(at, held.outAt), stripCrew);
    ready.push(Math.max(out, held.curedAt));
  }
  return ready;
};

/**
 * A minute before which an order cannot be complete, whatever the person does next: NEVER where it cannot be at all. Each
 * casting as if all moulds and hours were there for it alone.
 */
export const soonest = (ground: Ground, work: Work, order: number): number => {
  const { problem, hours } = ground;
  if (work.packedAt[order] !== NONE) return work.packedAt[order]!;
  const { pieces, packMinutes, from } = problem.orders[order]!;
  let at = problem.now;
  for (const { casting, count } of pieces) {
    const there = readyThere(ground, work, order, casting);
    const poured = pouredReady(ground, work, { casting, at: work.at, from }, count);
    const ready = [...there, ...poured].sort((a, b) => a - b)[count - 1] ?? NEVER;
    at = Math.max(at, ready);
    if (at >= NEVER) return NEVER;
  }
  return packMinutes === 0 ? at : hours.end(PACK, packMinutes, Math.max(at, from, work.at));
};
