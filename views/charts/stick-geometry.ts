import type { StickFacts } from '../../src/usecases/today/cut-list.ts';

/** Sizes of a drawing in its own units, which are pixels on a screen that shows it at its full size. */
export interface StickSizes {
  /** Of the longest stick. */
  width: number;
  /** Of the bar, and of the line of figures below it. */
  bar: number;
  line: number;
  /** Width of one figure on average, and between figures and what is beside them. */
  figure: number;
  gap: number;
}

interface Span {
  x: number;
  width: number;
}

/** A stick drawn to scale; a figure that has no room is left out, for it stands in words beside the drawing. */
export interface StickGeometry {
  width: number;
  height: number;
  pieces: Span[];
  left: (Span & { isKept: boolean }) | null;
  /** Figures by their middle: of pieces below the bar, of what is kept in it. */
  texts: { x: number; y: number; text: string }[];
}

const hasRoom = (text: string, { width }: Span, { figure, gap }: StickSizes): boolean =>
  text.length * figure + gap <= width;

/** Pieces with one figure after another as one run. */
const runsOf = (cuts: StickFacts['bar']['cuts'], spans: readonly Span[]): { text: string; spans: Span[] }[] => {
  const runs: { text: string; spans: Span[] }[] = [];
  cuts.forEach(({ text }, i) => {
    const last = runs.at(-1);
    if (last?.text === text) last.spans.push(spans[i]!);
    else runs.push({ text, spans: [spans[i]!] });
  });
  return runs;
};

const whole = (spans: readonly Span[]): Span => {
  const [first, last] = [spans[0]!, spans.at(-1)!];
  return { x: first.x, width: last.x + last.width - first.x };
};

/** Each piece's own figure where all of a run have room, or else one for the run: "8 × 190". */
const textsOf = ({ text, spans }: { text: string; spans: Span[] }, sizes: StickSizes): [string, Span][] => {
  if (spans.every((span) => hasRoom(text, span, sizes))) return spans.map((span) => [text, span]);
  const all = spans.length === 1 ? text : `${spans.length} × ${text}`;
  return hasRoom(all, whole(spans), sizes) ? [[all, whole(spans)]] : [];
};

/**
 * Where the pieces of a stick lie, in the order of cutting from its left end, with a saw cut between them, and what is left
 * at its right end. All sticks of a list are drawn to one scale, the longest of them as wide as the drawing.
 *
 * Example: a stick of 3000 with four of 190 and saw cuts of 2, drawn 300 wide: pieces of 19 at 0, 19.2, 38.4 and 57.6,
 * and 223.2 kept at 76.8.
 */
export const stickGeometry = (
  { bar, left }: Pick<StickFacts, 'bar' | 'left'>,
  longestMm: number,
  sizes: StickSizes,
): StickGeometry => {
  const scale = sizes.width / longestMm;
  let at = 0;
  const pieces = bar.cuts.map(({ mm }): Span => {
    const span = { x: at * scale, width: mm * scale };
    at += mm + bar.kerfMm;
    return span;
  });
  const rest = left && { x: (bar.mm - left.mm) * scale, width: left.mm * scale, isKept: left.isKept };
  const below = runsOf(bar.cuts, pieces).flatMap((run) => textsOf(run, sizes));
  const kept = left?.isKept ? `keep ${left.length}` : '';
  const inside: [string, Span][] = rest && kept && hasRoom(kept, rest, sizes) ? [[kept, rest]] : [];
  const placed =
    (y: number) =>
    ([text, span]: [string, Span]) => ({ x: span.x + span.width / 2, y, text });
  return {
    ...{ width: bar.mm * scale, height: sizes.bar + sizes.line, pieces, left: rest },
    texts: [...below.map(placed(sizes.bar + sizes.line / 2)), ...inside.map(placed(sizes.bar / 2))],
  };
};
