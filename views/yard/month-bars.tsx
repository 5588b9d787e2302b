import type { FC } from 'hono/jsx';
import type { TemperaturesModel } from '../../src/usecases/yard/show-temperatures.ts';
import { type BarsSizes, barsGeometry } from '../charts/bars-geometry.ts';
import { MONTH_NAMES } from './temperature-words.ts';

const SIZES: BarsSizes = { width: 400, height: 70, top: 16, bottom: 18 };
const NAME_LETTERS = 3;

/** The year by its months, as its fields say it: each a bar from freezing up, or down from it in frost. */
export const MonthBars: FC<{ months: TemperaturesModel['months'] }> = ({ months }) => {
  const { width, height, zeroY, bars, middles } = barsGeometry(
    months.map(({ celsius }) => celsius),
    SIZES,
  );
  return (
    <figure class="month-bars">
      <figcaption>How warm each month is where pieces set; the line is freezing</figcaption>
      <svg viewBox={`0 0 ${width} ${height}`} aria-hidden="true" focusable="false">
        {bars.map((bar, month) => (
          <>
            {bar && <rect class={months[month]!.guess ? 'month-guess' : 'month-known'} {...bar} />}
            {bar && (
              <text class="month-figure" x={middles[month]} y={Math.min(bar.y, zeroY) - 5} text-anchor="middle">
                {months[month]!.shown}
              </text>
            )}
            <text class="month-name" x={middles[month]} y={height - 4} text-anchor="middle">
              {(MONTH_NAMES[month] ?? '').slice(0, NAME_LETTERS)}
            </text>
          </>
        ))}
        <line class="month-zero" x1="0" x2={width} y1={zeroY} y2={zeroY} />
      </svg>
    </figure>
  );
};
