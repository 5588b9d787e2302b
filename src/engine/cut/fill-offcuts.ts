import { fewestPossible } from './fewest-sticks.ts';
import { fillStick } from './fill.ts';
import { packInRounds } from './rounds.ts';

const TOLERANCE = 1e-7;
/** Effort is counted, never timed. */
const FILLING_STEPS = 30_000;
const STEPS_PER_OFFCUT = 4000;
/** With more of them each is filled by itself. */
const FEW_OFFCUTS = 12;
const MOST_PACKED = 24;
const PACK_ROUNDS = 8;
const PACK_STEPS = 20_000;

/** How many of each kind every offcut takes, in the order of the offcuts, and what is still wanted then. */
interface Filled {
  taken: number[][];
  wanted: number[];
}

const less = (wanted: number[], counts: number[]): number[] => wanted.map((n, kind) => n - counts[kind]!);

/** Each offcut by itself as full as it can be, one after another. */
const oneByOne = (room: number[], wanted: number[], spaces: number[]): Filled => {
  let left = wanted;
  const taken = spaces.map((space) => {
    const { counts } = fillStick({ room, worth: room, wanted: left }, space, STEPS_PER_OFFCUT);
    left = less(left, counts);
    return counts;
  });
  return { taken, wanted: left };
};

/** Ways to fill all offcuts with something of everything left over: to none of them a cut that is wanted can be added. */
const waysToFill = (room: number[], wanted: number[], spaces: number[]): Filled[] => {
  const ways = new Map<string, Filled>();
  let steps = 0;
  const fill = (place: number, kind: number, space: number, counts: number[], left: number[], taken: number[][]) => {
    if (steps++ > FILLING_STEPS) return;
    if (place === spaces.length) {
      const key = left.join();
      if (!ways.has(key)) ways.set(key, { taken, wanted: left });
      return;
    }
    if (kind === room.length) {
      const isFull = room.every((x, i) => counts[i]! === left[i]! || x > space + TOLERANCE);
      if (isFull) fill(place + 1, 0, spaces[place + 1] ?? 0, [], less(left, counts), [...taken, counts]);
      return;
    }
    const most = Math.min(left[kind]!, Math.floor((space + TOLERANCE) / room[kind]!));
    for (let n = most; n >= 0; n--) fill(place, kind + 1, space - n * room[kind]!, [...counts, n], left, taken);
  };
  fill(0, 0, spaces[0] ?? 0, [], wanted, []);
  return [...ways.values()];
};

/** Kinds that are wanted, with what a list has of each. */
const wantedOf = (wanted: number[], ...lists: number[][]): number[][] => {
  const kinds = wanted.map((_, i) => i).filter((i) => wanted[i]! > 0);
  return lists.map((list) => kinds.map((i) => list[i]!));
};

/** No packing of what is left over takes fewer sticks. */
const atLeast = (room: number[], wanted: number[], capacity: number): number => {
  const [rooms, counts] = wantedOf(wanted, room, wanted) as [number[], number[]];
  return rooms.length === 0 ? 0 : fewestPossible(rooms, counts, capacity);
};

/** Sticks for what is left over, packed with little effort. */
const sticksFor = (room: number[], wanted: number[], capacity: number, aim: number): number => {
  const [rooms, counts] = wantedOf(wanted, room, wanted) as [number[], number[]];
  if (rooms.length === 0) return 0;
  return packInRounds({ room: rooms, worth: rooms, wanted: counts }, capacity, aim, PACK_ROUNDS, PACK_STEPS).sticks;
};

/**
 * How many cuts of each kind to take from each offcut, so that the others need as few whole sticks as can be: every way
 * to fill them is looked at where there are few, and otherwise as many as the counted effort allows. Of equally good ways
 * the one that fills the first offcut fullest, then the second. `room`, `spaces` and `capacity` in mm, with the kerf
 * added; `room` and `wanted` by kind.
 *
 * Example: of 7, two 6 and two 4 an offcut of 8 is fullest with {4, 4}, but 7, 6 and 6 take three sticks of 10 then. With
 * {7} in it two are enough, {6, 4} twice: `fillOffcuts([7, 6, 4], [1, 2, 2], [8], 10)[0]` is [1, 0, 0].
 */
export const fillOffcuts = (room: number[], wanted: number[], spaces: number[], capacity: number): number[][] => {
  const least = room.reduce((min, x, kind) => (wanted[kind]! > 0 ? Math.min(min, x) : min), Number.POSITIVE_INFINITY);
  const isFew = spaces.filter((space) => space + TOLERANCE >= least).length <= FEW_OFFCUTS;
  const ways = [oneByOne(room, wanted, spaces), ...(isFew ? waysToFill(room, wanted, spaces) : [])]
    .map((way, place) => ({ ...way, place, least: atLeast(room, way.wanted, capacity) }))
    .sort((a, b) => a.least - b.least || a.place - b.place);
  let best = { taken: ways[0]!.taken, sticks: Number.POSITIVE_INFINITY };
  for (const { taken, wanted: left, least } of ways.slice(0, MOST_PACKED)) {
    if (least >= best.sticks) break;
    const sticks = sticksFor(room, left, capacity, least);
    if (sticks < best.sticks) best = { taken, sticks };
  }
  return best.taken;
};
