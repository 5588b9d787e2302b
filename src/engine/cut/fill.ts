/** What a stick is filled from: kinds of cut, each with its room (length and kerf), worth, and how many are wanted. */
export interface CutKinds {
  room: ArrayLike<number>;
  worth: ArrayLike<number>;
  wanted: ArrayLike<number>;
}

/** A filling of one stick or sheet: how many of each kind, what they are worth, and what no filling is worth more than. */
export interface Filling {
  counts: number[];
  worth: number;
  /** As much as `worth` where nothing better is possible; infinite where nothing is known. */
  most: number;
  steps: number;
}

/** Fills one with what is worth the most of what is still wanted, by kind. */
export type Fill = (worth: ArrayLike<number>, wanted: ArrayLike<number>) => Filling;

const TOLERANCE = 1e-9;

/**
 * Fills one stick so that its cuts are worth the most: a bounded knapsack by depth-first search, kinds in order of
 * worth per mm, cut short where even the best kind left could not make up for what is missing. After `mostSteps` steps
 * the best filling found so far is returned, with `most` infinite. `room` and `capacity` in mm; a kind with nothing
 * wanted is left out. Counted, not timed, so that the answer is the same on any machine.
 *
 * Example: `fillStick({ room: [5, 3], worth: [5, 3], wanted: [4, 4] }, 11, 1000).counts` is [1, 2]: worth 11.
 */
export const fillStick = (kinds: CutKinds, capacity: number, mostSteps: number): Filling => {
  const { room, worth, wanted } = kinds;
  const order = Array.from({ length: room.length }, (_, i) => i).filter(
    (i) => wanted[i]! > 0 && room[i]! <= capacity + TOLERANCE,
  );
  order.sort((a, b) => worth[b]! / room[b]! - worth[a]! / room[a]! || room[b]! - room[a]! || a - b);
  const least = order.reduce((min, i) => Math.min(min, room[i]!), Number.POSITIVE_INFINITY);
  const taken = new Array<number>(order.length).fill(0);
  let best = -1;
  let counts: number[] = [];
  let steps = 0;

  const search = (depth: number, left: number, sum: number): void => {
    if (sum > best + TOLERANCE) {
      best = sum;
      counts = taken.slice();
    }
    if (depth === order.length || left + TOLERANCE < least) return;
    const kind = order[depth]!;
    if (sum + (worth[kind]! / room[kind]!) * left <= best + TOLERANCE) return;
    const most = Math.min(wanted[kind]!, Math.floor((left + TOLERANCE) / room[kind]!));
    for (let n = most; n >= 0 && steps < mostSteps; n--) {
      steps++;
      taken[depth] = n;
      search(depth + 1, left - n * room[kind]!, sum + n * worth[kind]!);
    }
    taken[depth] = 0;
  };
  search(0, capacity, 0);
  const byKind = new Array<number>(room.length).fill(0);
  counts.forEach((n, i) => {
    byKind[order[i]!] = n;
  });
  const found = Math.max(0, best);
  return { counts: byKind, worth: found, most: steps < mostSteps ? found : Number.POSITIVE_INFINITY, steps };
};
