import { rounded } from './rounded.ts';

interface Box {
  x: number;
  y: number;
  width: number;
  height: number;
}

/**
 * Many boxes of one look as the `d` of one path: a tenth of the letters that a shape for each would take.
 *
 * Example: a box at (2, 1), 10 wide and 4 high, is "M2 1h10v4h-10z".
 */
export const boxesPath = (boxes: readonly Box[]): string =>
  boxes
    .map(({ x, y, width, height }) => {
      const [w, h] = [rounded(width), rounded(height)];
      return `M${rounded(x)} ${rounded(y)}h${w}v${h}h${-w}z`;
    })
    .join('');
