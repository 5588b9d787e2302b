import type { FC } from 'hono/jsx';
import type { StickFacts } from '../../src/usecases/today/cut-list.ts';
import { short, Texts } from '../charts/drawn.tsx';
import { type StickSizes, stickGeometry } from '../charts/stick-geometry.ts';
import { CutLine } from './cut-line.tsx';
import { stickLine } from './evening-text.ts';
import { CUTTING } from './step-caution.tsx';

const SIZES: StickSizes = { width: 330, bar: 20, line: 16, figure: 6.6, gap: 6 };
/** Half a line's thickness, so that an outline is whole at the edge. */
const EDGE = 1;

/** A stick to scale. The line beside it says the same in words. */
const Bar: FC<{ stick: StickFacts; longestMm: number }> = ({ stick, longestMm }) => {
  const { height, pieces, left, texts } = stickGeometry(stick, longestMm, SIZES);
  return (
    <svg
      class="stick-bar"
      viewBox={`${-EDGE} ${-EDGE} ${SIZES.width + 2 * EDGE} ${short(height + 2 * EDGE)}`}
      aria-hidden="true"
    >
      {pieces.map(({ x, width }) => (
        <rect class="stick-piece" x={short(x)} y="0" width={short(width)} height={SIZES.bar} />
      ))}
      {left && (
        <rect
          class={left.isKept ? 'stick-left kept' : 'stick-left'}
          x={short(left.x)}
          y="0"
          width={short(left.width)}
          height={SIZES.bar}
        />
      )}
      {left && !left.isKept && (
        <line class="stick-cross" x1={short(left.x)} y1={SIZES.bar} x2={short(left.x + left.width)} y2="0" />
      )}
      <Texts look="stick-text" texts={texts} />
    </svg>
  );
};

/** Each stick with a box to tick, in words, and drawn: its pieces from the left, then what is kept of it. */
export const StickBars: FC<{ sticks: readonly StickFacts[]; folded: boolean }> = ({ sticks, folded }) => {
  const longestMm = Math.max(...sticks.map(({ bar }) => bar.mm));
  const isSawn = sticks.some(({ bar }) => bar.kerfMm > 0);
  return (
    <>
      <ul class="ticked">
        {sticks.map((stick) => (
          <CutLine line={stickLine(stick)} folded={folded}>
            <Bar stick={stick} longestMm={longestMm} />
          </CutLine>
        ))}
      </ul>
      <p class="hint">
        {isSawn && 'Drawn to scale from the left end; saw cuts are counted. '}
        {CUTTING}
      </p>
    </>
  );
};
