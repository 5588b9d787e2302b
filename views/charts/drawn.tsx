import type { FC } from 'hono/jsx';

const DECIMALS = 2;

/** Whole hundredths: an address of a point no longer than it has to be. */
export const short = (value: number): string => String(Number(value.toFixed(DECIMALS)));

interface Box {
  x: number;
  y: number;
  width: number;
  height: number;
}

/** Rectangles of a drawing, all of one look. */
export const Boxes: FC<{ look: string; boxes: readonly Box[] }> = ({ look, boxes }) => (
  <>
    {boxes.map(({ x, y, width, height }) => (
      <rect class={look} x={short(x)} y={short(y)} width={short(width)} height={short(height)} />
    ))}
  </>
);

interface Written {
  x: number;
  y: number;
  text: string | number;
  /** Read from below. */
  upright?: boolean;
}

/** Words of a drawing, each in the middle of its place. */
export const Texts: FC<{ look: string; texts: readonly Written[] }> = ({ look, texts }) => (
  <>
    {texts.map(({ x, y, text, upright }) => (
      <text
        class={look}
        x={short(x)}
        y={short(y)}
        text-anchor="middle"
        dominant-baseline="central"
        transform={upright ? `rotate(-90 ${short(x)} ${short(y)})` : undefined}
      >
        {text}
      </text>
    ))}
  </>
);
