/** What there is of a material that is cut: whole ones, and rests of opened ones by their length. */
export interface SticksThere {
  whole: number;
  offcuts: ReadonlyMap<number, number>;
}

/** A stick, what a cut loses, and from which length on a rest is kept. */
export interface StickFigures {
  stickMm: number;
  kerfMm: number;
  usableMm: number;
}

/** Lengths that are cut, with how many of each. */
export type Lengths = ReadonlyMap<number, number>;

/** More than any act of a small yard needs. */
const MOST_STEPS = 2_000_000;

const moved = <K>(counts: ReadonlyMap<K, number>, key: K, by: number): Map<K, number> => {
  const after = new Map(counts);
  const count = (after.get(key) ?? 0) + by;
  if (count === 0) after.delete(key);
  else after.set(key, count);
  return after;
};

const difference = (after: Lengths, before: Lengths): Lengths => {
  let left: Lengths = new Map([...after].filter(([, count]) => count !== 0));
  for (const [length, count] of before) left = moved(left, length, -count);
  return left;
};

/** All ways to cut pieces from a length, the longest of those left among them; told what is left of pieces and of the length. */
function* patterns(pieces: Lengths, mm: number, kerfMm: number, isFirst = true): Generator<[Lengths, number]> {
  const lengths = [...pieces.keys()].sort((a, b) => b - a);
  for (const length of isFirst ? lengths.slice(0, 1) : lengths) {
    if (length > mm) continue;
    const left = moved(pieces, length, -1);
    const rest = Math.max(0, mm - length - kerfMm);
    yield [left, rest];
    // Shorter ones after longer ones, so that no way comes twice.
    const shorter = new Map([...left].filter(([one]) => one <= length));
    const longer = [...left].filter(([one]) => one > length);
    for (const [then, end] of patterns(shorter, rest, kerfMm, false)) yield [new Map([...then, ...longer]), end];
  }
}

/**
 * Whether what is left of sticks is what some way of cutting just these pieces leaves, to the millimetre: rests of a usable length are
 * kept, each of them, and shorter ones are thrown away. Where no whole one is left by the book, pieces may be of others that it
 * does not know of, of which it keeps nothing.
 */
export const cutsAddUp = (
  before: SticksThere,
  after: SticksThere,
  pieces: Lengths,
  { stickMm, kerfMm, usableMm }: StickFigures,
): boolean => {
  let steps = 0;
  const inVain = new Set<string>();
  const keyOf = (...all: (Lengths | number)[]) =>
    JSON.stringify(all.map((one) => (typeof one === 'number' ? one : [...one].sort(([a], [b]) => a - b))));
  const search = (left: Lengths, whole: number, there: Lengths, missing: Lengths): boolean => {
    steps += 1;
    if (steps > MOST_STEPS) throw new Error('There are too many ways to cut that.');
    if (left.size === 0) return whole === 0 && missing.size === 0;
    const key = keyOf(left, whole, there, missing);
    if (inVain.has(key)) return false;
    inVain.add(key);
    const isUnknown = whole === 0 && after.whole === 0;
    const sources = [...there.keys(), ...(whole > 0 || isUnknown ? [null] : [])];
    return sources.some((offcut) => {
      for (const [pending, rest] of patterns(left, offcut ?? stickMm, kerfMm)) {
        const isKept = rest > 0 && rest >= usableMm && !(offcut === null && whole === 0);
        const made = isKept ? moved(missing, rest, -1) : missing;
        const own = offcut === null ? made : moved(made, offcut, 1);
        const wholeLeft = offcut === null ? Math.max(0, whole - 1) : whole;
        // Of several batches told at once, a later one may be cut from what an earlier one left.
        const stillThere = offcut === null ? there : moved(there, offcut, -1);
        if (search(pending, wholeLeft, isKept ? moved(stillThere, rest, 1) : stillThere, own)) return true;
      }
      return false;
    });
  };
  return search(pieces, before.whole - after.whole, before.offcuts, difference(after.offcuts, before.offcuts));
};
