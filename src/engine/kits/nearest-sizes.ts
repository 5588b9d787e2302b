import { allTurns } from './corners.ts';
import { type FewestBySum, fewestBySum, unlimited } from './fewest-panels.ts';
import type { Axis, Side } from './outline.ts';
import { type RunKind, runKind } from './runs.ts';

/** A size along one axis: the whole, and the corner an L leaves out (0 where there is none). Whole numbers of one unit. */
export interface Span {
  whole: number;
  cut: number;
}

export type NanoSize = Readonly<Record<Axis, Span>>;

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

/** For each length a side of a kind can have, the panels its run takes in one course. */
type Lengths = ReadonlyMap<number, number>;

const keepFewer = (lengths: Map<number, number>, length: number, panels: number): void => {
  if (length > 0 && panels < (lengths.get(length) ?? Number.POSITIVE_INFINITY)) lengths.set(length, panels);
};

const lengthsOfKind = (
  { addedNano, stepNano }: RunKind,
  panelLengths: readonly number[],
  fewest: FewestBySum,
): Lengths => {
  const lengths = new Map<number, number>();
  if (stepNano === 0) {
    for (const [sum, panels] of fewest) if (panels > 0) keepFewer(lengths, sum - addedNano, panels);
    return lengths;
  }
  const first = panelLengths.filter((length) => panelLengths.includes(length - stepNano));
  for (const length of first)
    for (const [sum, panels] of fewest) keepFewer(lengths, length + sum - addedNano, panels + 1);
  return lengths;
};

/** Lengths that all of some sides can have at once, and the panels those sides take; any length, where there are none. */
const shared = (all: readonly Lengths[]): Lengths | null => {
  const [first, ...others] = all;
  if (!first) return null;
  const lengths = new Map<number, number>();
  for (const [length, panels] of first) {
    let sum = panels;
    for (const other of others) sum += other.get(length) ?? Number.POSITIVE_INFINITY;
    if (Number.isFinite(sum)) lengths.set(length, sum);
  }
  return lengths;
};

const nearestFirst = (lengths: Lengths, target: number): { length: number; panels: number; off: number }[] =>
  [...lengths]
    .map(([length, panels]) => ({ length, panels, off: Math.abs(length - target) }))
    .sort((a, b) => a.off - b.off || a.length - b.length);

const bySize = (a: NearSpan, b: NearSpan) => a.difference - b.difference || a.panels - b.panels || a.whole - b.whole;

/** Adds to a list that keeps the nearest few. */
const keepNearest = (list: NearSpan[], span: NearSpan, most: number): void => {
  list.push(span);
  list.sort(bySize);
  if (list.length > most) list.pop();
};

/** The nearest few sizes of one axis; both lists are walked from the nearest on, until nothing nearer can come. */
const nearestSpans = (sides: readonly { side: Side; lengths: Lengths }[], target: Span, most: number): NearSpan[] => {
  const of = (whole: number, cut: number) =>
    shared(sides.filter(({ side }) => side.whole === whole && side.cut === cut).map(({ lengths }) => lengths));
  const [wholes, cuts, rests] = [of(1, 0), of(0, 1), of(1, -1)];
  const nearest: NearSpan[] = [];
  if (!wholes) return [{ ...target, difference: 0, panels: 0 }];
  const tooFar = (off: number) => nearest.length === most && off > nearest.at(-1)!.difference;
  const cutsInOrder = cuts ? nearestFirst(cuts, target.cut) : null;
  for (const whole of nearestFirst(wholes, target.whole)) {
    if (tooFar(whole.off)) break;
    if (!cutsInOrder)
      keepNearest(nearest, { whole: whole.length, cut: 0, difference: whole.off, panels: whole.panels }, most);
    for (const cut of cutsInOrder ?? []) {
      const difference = whole.off + cut.off;
      if (tooFar(difference)) break;
      const rest = rests?.get(whole.length - cut.length);
      if (rest === undefined) continue;
      const panels = whole.panels + cut.panels + rest;
      keepNearest(nearest, { whole: whole.length, cut: cut.length, difference, panels }, most);
    }
  }
  return nearest;
};

const kindKey = ({ addedNano, stepNano }: RunKind): string => `${addedNano} ${stepNano}`;

/** The kinds of run of every side, for every way to turn the corners. */
const kindsOfSides = (sides: readonly Side[], thickness: number, courses: number): KindOfSide[][] =>
  allTurns(sides.length === 1 ? 0 : sides.length).map((turns) =>
    sides.map((side, index) => ({ side, kind: runKind(sides, index, turns, thickness, courses) })),
  );

/** Results by key, worked out once each. */
const once = <T>() => {
  const known = new Map<string, T>();
  return (key: string, work: () => T): T => {
    const found = known.get(key) ?? work();
    known.set(key, found);
    return found;
  };
};

const sizeKey = ({ x, y }: NanoSize): string => [x.whole, x.cut, y.whole, y.cut].join(' ');

/** How far beyond the size asked for is looked, in longest panels. Sizes further off than that are not given. */
const LOOKED_BEYOND = 3;

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
  const beyond = LOOKED_BEYOND * Math.max(...lengths);
  const fewest = fewestBySum(lengths, Math.max(asked.x.whole, asked.y.whole) + beyond, unlimited());
  const [lengthsOnce, spansOnce] = [once<Lengths>(), once<NearSpan[]>()];
  const spans = (kinds: readonly KindOfSide[], axis: Axis): NearSpan[] => {
    const own = kinds.filter(({ side }) => side.axis === axis);
    return spansOnce([axis, ...own.map(({ kind }) => kindKey(kind))].join(), () => {
      const withLengths = own.map(({ side, kind }) => ({
        side,
        lengths: lengthsOnce(kindKey(kind), () => lengthsOfKind(kind, lengths, fewest)),
      }));
      return nearestSpans(withLengths, asked[axis], most).filter(
        ({ difference }) => difference <= beyond - 2 * thickness,
      );
    });
  };
  const found = new Map<string, NearSize>();
  for (const kinds of kindsOfSides(sides, thickness, courses))
    for (const x of spans(kinds, 'x'))
      for (const y of spans(kinds, 'y')) {
        const size = { x: { whole: x.whole, cut: x.cut }, y: { whole: y.whole, cut: y.cut } };
        const near = { size, differenceNano: x.difference + y.difference, panels: x.panels + y.panels };
        const before = found.get(sizeKey(size));
        if (!before || near.panels < before.panels) found.set(sizeKey(size), near);
      }
  return [...found.values()]
    .sort(
      (a, b) =>
        a.differenceNano - b.differenceNano ||
        a.panels - b.panels ||
        a.size.x.whole - b.size.x.whole ||
        a.size.y.whole - b.size.y.whole,
    )
    .slice(0, most);
};
