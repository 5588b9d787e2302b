import type { FC } from 'hono/jsx';

/** A condition is a word, a shape and a colour; this is the shape. The word stands beside it. */
export type MarkShape = 'full' | 'ring' | 'square' | 'triangle' | 'cross' | 'half';

const SHAPES: Record<MarkShape, () => unknown> = {
  full: () => <circle cx="8" cy="8" r="5.5" fill="currentColor" />,
  ring: () => <circle cx="8" cy="8" r="5" fill="none" stroke="currentColor" stroke-width="2" />,
  half: () => (
    <>
      <circle cx="8" cy="8" r="5" fill="none" stroke="currentColor" stroke-width="2" />
      <path d="M8 3a5 5 0 0 0 0 10z" fill="currentColor" />
    </>
  ),
  square: () => <rect x="3" y="3" width="10" height="10" fill="currentColor" />,
  triangle: () => <path d="M8 2 15 14H1z" fill="currentColor" />,
  cross: () => <path d="M3 3l10 10M13 3 3 13" stroke="currentColor" stroke-width="2" fill="none" />,
};

export const Mark: FC<{ shape: MarkShape }> = ({ shape }) => (
  <svg class={`mark mark-${shape}`} viewBox="0 0 16 16" width="16" height="16" aria-hidden="true" focusable="false">
    {SHAPES[shape]()}
  </svg>
);
