import { allTurns } from '../../src/engine/kits/corners.ts';
import type { Side } from '../../src/engine/kits/outline.ts';

/** Panels in one course, and of how many lengths, of the best kit there is; null when there is none. */
export interface BestKit {
  panels: number;
  kinds: number;
}

/** From where to where the panels of a side reach, by the words of corners.ts and not by its code. */
const stretch = (length: number, side: Side, startsThrough: boolean, endsThrough: boolean, thickness: number) => {
  const from = { outer: startsThrough ? 0 : thickness, inner: startsThrough ? -thickness : 0, end: 0 }[side.start];
  const short = { outer: endsThrough ? 0 : thickness, inner: endsThrough ? -thickness : 0, end: 0 }[side.end];
  return [from, length - short] as const;
};

/** Every sequence of panels from one place to another, as the places of its joints and ends. */
const sequences = (from: number, to: number, panels: readonly number[]): number[][] => {
  if (from === to) return [[from]];
  return panels.flatMap((panel) =>
    from + panel > to ? [] : sequences(from + panel, to, panels).map((rest) => [from, ...rest]),
  );
};

const lengthsIn = (marks: readonly number[]): number[] => marks.slice(1).map((mark, index) => mark - marks[index]!);

/** Every pair of sequences for a side whose joints a pin can join: a thickness apart, or at one place where ends don't move. */
const sideChoices = (
  first: number[][],
  second: number[][],
  thickness: number,
  moves: boolean,
): { panels: number; kinds: Set<number> }[] =>
  first.flatMap((one) =>
    second
      .filter((other) => other.length === one.length)
      .filter((other) => one.every((mark, index) => Math.abs(mark - other[index]!) === (moves ? thickness : 0)))
      .map((other) => ({ panels: one.length - 1, kinds: new Set([...lengthsIn(one), ...lengthsIn(other)]) })),
  );

const better = (a: BestKit | null, b: BestKit | null): BestKit | null => {
  if (!a || !b) return a ?? b;
  return b.panels < a.panels || (b.panels === a.panels && b.kinds < a.kinds) ? b : a;
};

/** The best over all choices of a side each. */
const bestOf = (sides: { panels: number; kinds: Set<number> }[][]): BestKit | null => {
  let states = new Map<string, { panels: number; kinds: Set<number> }>([['', { panels: 0, kinds: new Set() }]]);
  for (const choices of sides) {
    const next = new Map<string, { panels: number; kinds: Set<number> }>();
    for (const state of states.values())
      for (const choice of choices) {
        const kinds = new Set([...state.kinds, ...choice.kinds]);
        const [panels, key] = [state.panels + choice.panels, [...kinds].sort((a, b) => a - b).join()];
        if (panels < (next.get(key)?.panels ?? Number.POSITIVE_INFINITY)) next.set(key, { panels, kinds });
      }
    states = next;
  }
  return [...states.values()].reduce<BestKit | null>(
    (best, { panels, kinds }) => better(best, { panels, kinds: kinds.size }),
    null,
  );
};

/** The best kit by trying every way to turn the corners with every sequence of panels on every side. For small numbers. */
export const everyKit = (
  sides: readonly Side[],
  lengths: readonly number[],
  panels: readonly number[],
  thickness: number,
  courses: number,
): BestKit | null => {
  const corners = sides[0]!.start === 'end' ? 0 : sides.length;
  let best: BestKit | null = null;
  for (const turns of allTurns(corners)) {
    const choices = sides.map((side, index) => {
      const [start, end] = [turns[index] === true, turns[(index + 1) % sides.length] === true];
      const [from, to] = stretch(lengths[index]!, side, start, !end, thickness);
      const [otherFrom, otherTo] = stretch(lengths[index]!, side, !start, end, thickness);
      const first = sequences(from, to, panels).filter((marks) => marks.length > 1);
      if (courses === 1) return first.map((marks) => ({ panels: marks.length - 1, kinds: new Set(lengthsIn(marks)) }));
      return sideChoices(first, sequences(otherFrom, otherTo, panels), thickness, corners > 0);
    });
    best = better(best, bestOf(choices));
  }
  return best;
};
