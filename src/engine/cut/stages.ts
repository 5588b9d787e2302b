import { fewestSticks } from './fewest-sticks.ts';
import { fillOffcuts } from './fill-offcuts.ts';
import { cutFrom, type OpenStick, openStick, type TimedCut } from './open-sticks.ts';
import type { Pattern } from './rounds.ts';

/** A stick with the cuts it is meant for and that have not been taken from it yet, by kind. */
interface PlannedStick extends OpenStick {
  meant: number[];
}

/**
 * How many cuts of each kind there are, kinds without any too.
 *
 * Example: `countKinds([{ kind: 0, count: 2 }, { kind: 2, count: 1 }], 3)` is [2, 0, 1].
 */
export const countKinds = (cuts: TimedCut[], kinds: number): number[] => {
  const wanted = new Array<number>(kinds).fill(0);
  for (const cut of cuts) wanted[cut.kind] = wanted[cut.kind]! + cut.count;
  return wanted;
};

/** Means cuts for what earlier stages left over, the shortest first; `wanted` is reduced by it. */
const meanForRests = (sticks: PlannedStick[], room: number[], wanted: number[], capacity: number): void => {
  const inOrder = [...sticks].sort((a, b) => a.left - b.left);
  const spaces = inOrder.map((stick) => stick.left);
  fillOffcuts(room, wanted, spaces, capacity).forEach((counts, place) => {
    const stick = inOrder[place]!;
    counts.forEach((n, kind) => {
      stick.meant[kind] = stick.meant[kind]! + n;
      wanted[kind] = wanted[kind]! - n;
      stick.left -= n * room[kind]!;
    });
  });
};

/** Kinds that are wanted at all are packed; the patterns are given for every kind. */
const packNew = (room: number[], wanted: number[], capacity: number): Pattern[] => {
  const kinds = room.map((_, i) => i).filter((i) => wanted[i]! > 0);
  if (kinds.length === 0) return [];
  const packing = fewestSticks(
    kinds.map((i) => room[i]!),
    kinds.map((i) => wanted[i]!),
    capacity,
  );
  return packing.patterns.map((pattern) => {
    const counts = new Array<number>(room.length).fill(0);
    kinds.forEach((kind, i) => {
      counts[kind] = pattern.counts[i]!;
    });
    return { counts, times: pattern.times };
  });
};

/** The pattern with the most of a kind on it, so that the next stick is opened the later. */
const openFor = (pool: Pattern[], cut: TimedCut, room: number[], capacity: number): PlannedStick => {
  let best: Pattern | undefined;
  for (const x of pool)
    if (x.times > 0 && x.counts[cut.kind]! > 0 && (!best || x.counts[cut.kind]! > best.counts[cut.kind]!)) best = x;
  if (!best) throw new Error(`no stick is left for ${cut.lengthMm} mm`);
  best.times--;
  const used = best.counts.reduce((sum, n, kind) => sum + n * room[kind]!, 0);
  return { ...openStick(cut.at, capacity - used), meant: [...best.counts] };
};

/**
 * Cuts stage after stage, each with as few new sticks as it can: first what fits on offcuts and on what earlier stages left
 * over, then new sticks. Within a stage sticks are opened in the order of time, each at its first cut. Room and capacity in mm, with
 * the kerf added; `room` by kind, the cuts of a stage in order of time.
 *
 * Example: room for 10 a stick; a stage of two 4, then a stage of 6 and 2: {4, 4, 2} and {6}.
 */
export const cutInStages = (
  stages: TimedCut[][],
  room: number[],
  capacity: number,
  offcuts: readonly OpenStick[] = [],
): OpenStick[] => {
  const sticks: PlannedStick[] = offcuts.map((stick) => ({ ...stick, meant: room.map(() => 0) }));
  for (const cuts of stages) {
    const wanted = countKinds(cuts, room.length);
    meanForRests(sticks, room, wanted, capacity);
    const pool = packNew(room, wanted, capacity);
    const meantFor = room.map((_, kind) => sticks.filter((x) => x.meant[kind]! > 0));
    for (const cut of cuts) {
      for (let left = cut.count; left > 0; ) {
        let stick = meantFor[cut.kind]!.at(-1);
        if (!stick) {
          stick = openFor(pool, cut, room, capacity);
          sticks.push(stick);
          for (let kind = 0; kind < room.length; kind++) if (stick.meant[kind]! > 0) meantFor[kind]!.push(stick);
        }
        const count = Math.min(left, stick.meant[cut.kind]!);
        cutFrom(stick, cut, count);
        stick.meant[cut.kind] = stick.meant[cut.kind]! - count;
        left -= count;
        if (stick.meant[cut.kind] === 0) meantFor[cut.kind]!.pop();
      }
    }
  }
  return sticks.filter((stick) => stick.cuts.length > 0);
};
