import type { Rect, SheetCutLine } from './layout.ts';

const TOLERANCE = 1e-6;

/** One direction: where a part begins and how far it goes, and the same across it. */
const WAYS = [
  { cut: 'along', from: 'yMm', size: 'lengthMm', beside: 'xMm', wide: 'widthMm' },
  { cut: 'across', from: 'xMm', size: 'widthMm', beside: 'yMm', wide: 'lengthMm' },
] as const;
type WayOfCut = (typeof WAYS)[number];

const isThrough = (parts: readonly Rect[], { from, size }: WayOfCut, at: number): boolean =>
  parts.every((one) => one[from] + one[size] <= at + TOLERANCE || one[from] >= at - TOLERANCE);

/** The first line from edge to edge that goes through no part, the shorter way first; null where nothing is left to cut off. */
const firstCut = (space: Rect, parts: readonly Rect[]): { way: WayOfCut; at: number } | null => {
  for (const way of [...WAYS].sort((a, b) => space[a.wide] - space[b.wide])) {
    const [start, end] = [space[way.from], space[way.from] + space[way.size]];
    const edges = parts.flatMap((one) => [one[way.from], one[way.from] + one[way.size]]).sort((a, b) => a - b);
    const at = edges.find((edge) => edge > start + TOLERANCE && edge < end - TOLERANCE && isThrough(parts, way, edge));
    if (at !== undefined) return { way, at };
  }
  return null;
};

/**
 * The cuts that take the parts of a sheet apart, each from edge to edge of what is there by then, in the order in which they are
 * made. The parts can be cut apart.
 *
 * Example: a sheet of 400 by 1000 and one part of 200 by 900 in its corner: along at 900, then across at 200.
 */
export const cutsOfSheet = (sheet: Rect, parts: readonly Rect[]): SheetCutLine[] => {
  const lines: SheetCutLine[] = [];
  const cutUp = (space: Rect, own: readonly Rect[]): void => {
    const found = own.length > 0 ? firstCut(space, own) : null;
    if (!found) return;
    const { way, at } = found;
    const edge = { xMm: space.xMm, yMm: space.yMm, [way.from]: at };
    lines.push({ number: lines.length + 1, cut: way.cut, ...edge, lengthMm: space[way.wide] });
    const first = { ...space, [way.size]: at - space[way.from] };
    const second = { ...space, [way.from]: at, [way.size]: space[way.from] + space[way.size] - at };
    cutUp(
      first,
      own.filter((one) => one[way.from] < at - TOLERANCE),
    );
    cutUp(
      second,
      own.filter((one) => one[way.from] >= at - TOLERANCE),
    );
  };
  cutUp(sheet, parts);
  return lines;
};
