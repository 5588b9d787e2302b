interface Box {
  x: number;
  y: number;
  width: number;
  height: number;
}

/** To a tenth of a pixel: nobody sees less. `short(1.26)` is 1.3. */
export const short = (value: number): number => Math.round(value * 10) / 10;

/**
 * Many boxes of one look as the `d` of one path: a tenth of the letters that a shape for each would take.
 *
 * Example: a box at (2, 1), 10 wide and 4 high, is "M2 1h10v4h-10z".
 */
export const boxesPath = (boxes: readonly Box[]): string =>
  boxes
    .map(({ x, y, width, height }) => {
      const [w, h] = [short(width), short(height)];
      return `M${short(x)} ${short(y)}h${w}v${h}h${-w}z`;
    })
    .join('');
