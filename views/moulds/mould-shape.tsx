import type { FC } from 'hono/jsx';
import { type MouldSizes, mouldDrawn } from '../charts/mould-geometry.ts';
import type { MouldFill } from './mould-text.ts';

const SIZES: MouldSizes = { width: 158, height: 34, bar: 4, gap: 4 };
const EDGE = 1;

/** The fills of moulds that are patterns; once on a page that draws some. */
export const MouldPatterns: FC = () => (
  <svg class="mould-patterns" width="0" height="0" aria-hidden="true" focusable="false">
    <defs>
      <pattern id="mould-set-up" width="7" height="7" patternUnits="userSpaceOnUse">
        <circle class="mould-dot" cx="3.5" cy="3.5" r="1.6" />
      </pattern>
      <pattern id="mould-dirty" width="8" height="8" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <line class="mould-hatch" x1="0" y1="0" x2="0" y2="8" />
      </pattern>
      <pattern id="mould-damaged" width="7" height="7" patternUnits="userSpaceOnUse">
        <path class="mould-cross" d="M0 0 7 7M7 0 0 7" />
      </pattern>
    </defs>
  </svg>
);

const PATTERN: Partial<Record<MouldFill, string>> = {
  'set-up': 'url(#mould-set-up)',
  dirty: 'url(#mould-dirty)',
  damaged: 'url(#mould-damaged)',
};

interface ShapeProps {
  /** "to-build": one that is not there yet. */
  fill: MouldFill | 'to-build';
  painted: string;
  mould: { lengthMm: number | null; turnsToSealing: number | null; turnsBetweenCoats: number | null };
  longestMm: number;
}

/** A mould to its length, filled by its state, with what is painted on it and its turns to the coat. In words beside it. */
export const MouldShape: FC<ShapeProps> = ({ fill, painted, mould, longestMm }) => {
  const { width, height, coat, inAll } = mouldDrawn(mould, longestMm, SIZES);
  const pattern = fill === 'to-build' ? undefined : PATTERN[fill];
  const frame = { x: EDGE, y: EDGE, width, height: height - EDGE };
  return (
    <svg
      class={`mould-shape is-${fill}`}
      viewBox={`0 0 ${SIZES.width + 2 * EDGE} ${inAll + 2 * EDGE}`}
      aria-hidden="true"
      focusable="false"
    >
      <rect class="mould-frame" {...frame} />
      {pattern && <rect class="mould-fill" {...frame} fill={pattern} />}
      <text class="mould-painted" x={EDGE + width / 2} y={EDGE + height / 2 + 5} text-anchor="middle">
        {painted}
      </text>
      {coat && (
        <>
          <rect class="coat-all" x={EDGE} y={coat.y} width={width} height={coat.height} />
          <rect class="coat-left" x={EDGE} y={coat.y} width={coat.left} height={coat.height} />
        </>
      )}
    </svg>
  );
};
