import { allTurns } from './corners.ts';
import { type FewestBySum, fewestBySum, panelsInRun } from './fewest-panels.ts';
import type { Axis, Side } from './outline.ts';
import { type RunKind, runKind } from './runs.ts';

/** A size along one axis: the whole, and the corner an L leaves out (0 where there is none). Whole numbers of one unit. */
interface Span {
  whole: number;
  cut: number;
}

/** A size along both axes, whole nanometres; the y of a row is 0. */
export type NanoSize = Readonly<Record<Axis, Span>>;

/** A size that can be made, how far it is from the one asked for, and how many panels it takes. */
export interface NearSize {
  size: NanoSize;
  /** By how much its lengths differ from those asked for, added up. */
  differenceNano: number;
  /** In one course. */
  panels: number;
}

interface NearSpan extends Span {
  difference: number;
  panels: number;
}

interface KindOfSide {
  side: Side;
  kind: RunKind;
}

/** The panels there are, and all that they can add up to. */
interface Panels {
  lengths: readonly number[];
  fewest: FewestBySum;
  /** In order. */
  sums: readonly number[];
}

interface NearLength {
  length: number;
  panels: number;
  off: number;
}

const panelsForSide = (
  length: number,
  { addedNano, ...kind }: RunKind,
  { lengths, fewest }: Panels,
): number | undefined =>
  length > 0 ? panelsInRun({ longNano: length + addedNano, ...kind }, lengths, fewest) : undefined;

/** The place of the first number that is not below a limit. */
const firstFrom = (sorted: readonly number[], limit: number): number => {
  let [low, high] = [0, sorted.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (sorted[middle]! < limit) low = middle + 1;
    else high = middle;
  }
  return low;
};

/** Lengths within a window that a side of this kind might have; whether it can is for `panelsForSide` to say. */
const lengthsAround = (
  target: number,
  window: number,
  { addedNano, stepNano }: RunKind,
  panels: Panels,
): Set<number> => {
  const first = stepNano === 0 ? [0] : panels.lengths.filter((length) => panels.lengths.includes(length - stepNano));
  const around = new Set<number>();
  for (const length of first) {
    const middle = target + addedNano - length;
    for (let i = firstFrom(panels.sums, middle - window); i < panels.sums.length; i++) {
      if (panels.sums[i]! > middle + window) break;
      around.add(panels.sums[i]! + length - addedNano);
    }
  }
  return around;
};

/** Lengths within a window that all of some sides can have at once, the nearest first. */
const nearLengths = (target: number, window: number, kinds: readonly RunKind[], panels: Panels): NearLength[] => {
  const near: NearLength[] = [];
  for (const length of lengthsAround(target, window, kinds[0]!, panels)) {
    let sum = 0;
    for (const kind of kinds) sum += panelsForSide(length, kind, panels) ?? Number.POSITIVE_INFINITY;
    if (Number.isFinite(sum)) near.push({ length, panels: sum, off: Math.abs(length - target) });
  }
  return near.sort((a, b) => a.off - b.off || a.length - b.length);
};

const bySize = (a: NearSpan, b: NearSpan) => a.difference - b.difference || a.panels - b.panels || a.whole - b.whole;

/** The nearest few of an L: every whole with every corner left out, each from the nearest on, until nothing nearer can come. */
const withCuts = (
  wholes: NearLength[],
  cuts: NearLength[],
  rest: RunKind,
  panels: Panels,
  most: number,
): NearSpan[] => {
  const nearest: NearSpan[] = [];
  const tooFar = (off: number) => nearest.length === most && off > nearest.at(-1)!.difference;
  for (const whole of wholes) {
    if (tooFar(whole.off)) break;
    for (const cut of cuts) {
      const difference = whole.off + cut.off;
      if (tooFar(difference)) break;
      const more = panelsForSide(whole.length - cut.length, rest, panels);
      if (more === undefined) continue;
      nearest.push({ whole: whole.length, cut: cut.length, difference, panels: whole.panels + cut.panels + more });
      nearest.sort(bySize);
      if (nearest.length > most) nearest.pop();
    }
  }
  return nearest;
};

const kindsWith = (sides: readonly KindOfSide[], whole: 0 | 1, cut: -1 | 0 | 1): RunKind[] =>
  sides.filter(({ side }) => side.whole === whole && side.cut === cut).map(({ kind }) => kind);

/** The nearest few sizes of one axis that differ by no more than a window. */
const spansWithin = (
  window: number,
  sides: readonly KindOfSide[],
  target: Span,
  panels: Panels,
  most: number,
): NearSpan[] => {
  const wholes = nearLengths(target.whole, window, kindsWith(sides, 1, 0), panels);
  const cuts = kindsWith(sides, 0, 1);
  const [rest] = kindsWith(sides, 1, -1);
  const spans = rest
    ? withCuts(wholes, nearLengths(target.cut, window, cuts, panels), rest, panels, most)
    : wholes.map(({ length, off, panels: count }) => ({ whole: length, cut: 0, difference: off, panels: count }));
  return spans.filter(({ difference }) => difference <= window).slice(0, most);
};

/** Whether any run of this kind can be made: one that steps needs two panels that differ by the step. */
const isPossible = ({ stepNano }: RunKind, { lengths }: Panels): boolean =>
  stepNano === 0 || lengths.some((length) => lengths.includes(length - stepNano));

/** The first look is this close; each further one reaches four times as far. */
const FIRST_LOOKS = 64;
const WIDER = 4;

/** The nearest few sizes of one axis; an axis without sides has the size asked for. Looks close by first. */
const nearestSpans = (
  beyond: number,
  sides: readonly KindOfSide[],
  target: Span,
  panels: Panels,
  most: number,
): NearSpan[] => {
  if (sides.length === 0) return [{ ...target, difference: 0, panels: 0 }];
  if (!sides.every(({ kind }) => isPossible(kind, panels))) return [];
  for (let window = beyond / FIRST_LOOKS; window < beyond; window *= WIDER) {
    const spans = spansWithin(window, sides, target, panels, most);
    if (spans.length === most) return spans;
  }
  return spansWithin(beyond, sides, target, panels, most);
};

const sizeKey = ({ x, y }: NanoSize): string => [x.whole, x.cut, y.whole, y.cut].join(' ');

/** How far beyond the size asked for is looked, in longest panels. Sizes further off than that are not given. */
const LOOKED_BEYOND = 3;

/** The kinds of run along one axis, as a name that is the same for the same kinds. */
const kindsKey = (axis: Axis, kinds: readonly KindOfSide[]): string =>
  [axis, ...kinds.map(({ kind: { addedNano, stepNano } }) => `${addedNano} ${stepNano}`)].join();

/**
 * The nearest few sizes that the panels can make, of all ways to turn the corners: the smallest difference first (the
 * differences of its lengths added up), then the fewest panels. The first is the size asked for where that can be made.
 * Lengths in nanometres; `lengths` each once and longer than the panels are thick.
 *
 * Example: a row of 1500 from panels of 900 and 600 can be made; one of 1600 can't, and 1500 is nearest, then 1800.
 */
export const nearestSizes = (
  sides: readonly Side[],
  asked: NanoSize,
  lengths: readonly number[],
  thickness: number,
  courses: number,
  most: number,
): NearSize[] => {
  const farthest = Math.max(asked.x.whole, asked.y.whole);
  const beyond = LOOKED_BEYOND * Math.max(...lengths);
  const fewest = fewestBySum(lengths, farthest + beyond + 2 * thickness);
  const panels: Panels = { lengths, fewest, sums: [...fewest.keys()].sort((a, b) => a - b) };
  const known = new Map<string, NearSpan[]>();
  const spansOf = (axis: Axis, kinds: readonly KindOfSide[]): NearSpan[] => {
    const own = kinds.filter(({ side }) => side.axis === axis);
    const key = kindsKey(axis, own);
    const spans = known.get(key) ?? nearestSpans(beyond, own, asked[axis], panels, most);
    known.set(key, spans);
    return spans;
  };
  const found = new Map<string, NearSize>();
  for (const turns of allTurns(sides.length === 1 ? 0 : sides.length)) {
    const kinds = sides.map((side, index) => ({ side, kind: runKind(sides, index, turns, thickness, courses) }));
    for (const x of spansOf('x', kinds))
      for (const y of spansOf('y', kinds)) {
        const size = { x: { whole: x.whole, cut: x.cut }, y: { whole: y.whole, cut: y.cut } };
        const near = { size, differenceNano: x.difference + y.difference, panels: x.panels + y.panels };
        const before = found.get(sizeKey(size));
        if (!before || near.panels < before.panels) found.set(sizeKey(size), near);
      }
  }
  return [...found.values()].sort(nearestFirst).slice(0, most);
};

const nearestFirst = (a: NearSize, b: NearSize): number =>
  a.differenceNano - b.differenceNano ||
  a.panels - b.panels ||
  a.size.x.whole - b.size.x.whole ||
  a.size.y.whole - b.size.y.whole;
