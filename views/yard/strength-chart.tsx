import type { FC } from 'hono/jsx';
import type { MixStrength, MixStrengthModel } from '../../src/usecases/yard/show-mix-strength.ts';
import { type CurveSizes, curveGeometry, labelRows } from '../charts/curve-geometry.ts';
import { dayText } from '../parts/day-text.ts';
import { STAGE_MARKS, shareMark, strengthTitle } from './strength-words.ts';

/** On a desk and on a phone, where letters are as large. */
const SIZES: readonly (CurveSizes & { on: string })[] = [
  { on: 'desk', width: 760, height: 240, left: 48, top: 20, bottom: 28 },
  { on: 'phone', width: 350, height: 220, left: 44, top: 20, bottom: 28 },
];
/** Rough width of a letter. */
const LETTER = 7;
const DAY_HOURS = 24;
const GRID = [0.25, 0.5, 0.75, 1];

interface CurveMark {
  hours: number;
  share: number | null;
  text: string;
}

/** What stands on the curve, in order of time; a piece too young for it stands on the ground. */
const marksOf = ({ stages, shares }: MixStrength, today: string): CurveMark[] =>
  [
    ...stages.map(({ at, hours, day, strength }) => ({
      hours,
      share: 'share' in strength ? strength.share : null,
      text: `${STAGE_MARKS[at]} ${dayText(day, today)}`,
    })),
    ...shares.flatMap(({ share, day, hours }) =>
      day === null || hours === null ? [] : [{ hours, share, text: `${shareMark(share)} ${dayText(day, today)}` }],
    ),
  ].sort((a, b) => a.hours - b.hours);

const Chart: FC<{ strength: MixStrength; today: string; sizes: CurveSizes & { on: string } }> = ({
  strength,
  today,
  sizes,
}) => {
  const last = strength.curve.at(-1)?.hours ?? 1;
  const drawn = curveGeometry(strength.curve, last, sizes);
  const marks = marksOf(strength, today).map((mark) => {
    const [x, y, width] = [drawn.xOf(mark.hours), drawn.yOf(mark.share ?? 0), mark.text.length * LETTER];
    const isRight = x + 10 + width <= drawn.width;
    return {
      ...mark,
      at: { x, y },
      x: isRight ? x + 10 : drawn.width - width,
      y: y + (mark.share === null ? -8 : 16),
      width,
    };
  });
  const rows = labelRows(marks);
  const title = `strength-title-${sizes.on}`;
  return (
    <svg
      class={`strength-chart on-${sizes.on}`}
      viewBox={`0 0 ${drawn.width} ${drawn.height}`}
      width={drawn.width}
      height={drawn.height}
      role="img"
      aria-labelledby={title}
    >
      <title id={title}>{strengthTitle}</title>
      {GRID.map((share) => (
        <>
          <line class="curve-grid" x1={sizes.left} x2={drawn.width} y1={drawn.yOf(share)} y2={drawn.yOf(share)} />
          <text class="curve-scale" x={0} y={drawn.yOf(share) + 4}>
            {`${share * 100} %`}
          </text>
        </>
      ))}
      <line class="curve-ground" x1={sizes.left} x2={drawn.width} y1={drawn.noneY} y2={drawn.noneY} />
      <path class="curve-line" d={drawn.line} />
      {marks.map(({ at, x, text, share }, place) => (
        <>
          <line class="curve-mark" x1={at.x} x2={at.x} y1={at.y} y2={drawn.noneY} />
          <circle class={share === null ? 'curve-dot unknown' : 'curve-dot'} cx={at.x} cy={at.y} r={5} />
          <text class="curve-text" x={x} y={rows[place]}>
            {text}
          </text>
        </>
      ))}
      <text class="curve-scale" x={sizes.left} y={drawn.height - 6}>
        filled today
      </text>
      <text class="curve-scale" x={drawn.width} y={drawn.height - 6} text-anchor="end">
        {`after ${Math.round(last / DAY_HOURS)} days`}
      </text>
    </svg>
  );
};

/** How strong a piece gets by the curve, with the days that matter on it; the table below says the same. */
export const StrengthChart: FC<{ strength: MixStrength; today: MixStrengthModel['today'] }> = ({ strength, today }) => (
  <figure class="strength-charts">
    <figcaption>{strengthTitle}</figcaption>
    {SIZES.map((sizes) => (
      <Chart strength={strength} today={today} sizes={sizes} />
    ))}
  </figure>
);
