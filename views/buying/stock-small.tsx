import type { FC } from 'hono/jsx';
import { dateOfDay, dayNumber } from '../../shared/time.ts';
import type { StockFacts } from '../../src/usecases/buying/buying-facts.ts';
import { type StockSizes, stockGeometry } from '../charts/stock-geometry.ts';
import { dayText } from '../parts/day-text.ts';

const SIZES: StockSizes = { width: 200, height: 34, left: 0, top: 4, bottom: 6 };

/** "runs short Wed 14 Apr" */
const shortText = ({ ahead }: Pick<StockFacts, 'ahead'>, today: string): string | null =>
  ahead.shortDay === null ? null : `runs short ${dayText(dateOfDay(dayNumber(today) + ahead.shortDay), today)}`;

/** How much there is of a material in the weeks to come, small: a stepped line, and the day on which it runs short. */
export const StockSmall: FC<{ stock: StockFacts; days: number; today: string }> = ({ stock, days, today }) => {
  const { start, levels, shortDay } = stock.ahead;
  const drawn = stockGeometry(start, levels, { first: 0, last: days }, SIZES);
  const short = shortText(stock, today);
  const x = shortDay === null ? 0 : (shortDay / days) * SIZES.width;
  return (
    <p class="stock-small">
      <svg
        viewBox={`0 0 ${drawn.width} ${drawn.height}`}
        width={drawn.width}
        height={drawn.height}
        aria-hidden="true"
        focusable="false"
      >
        <line class="ground" x1={0} x2={drawn.width} y1={drawn.noneY} y2={drawn.noneY} />
        <path class="level" d={drawn.line} />
        {short && <line class="short" x1={x} x2={x} y1={0} y2={drawn.noneY} />}
        {short && <path class="short-flag" d={`M${x - 5} 0h10l-5 8z`} />}
      </svg>
      {short && <span class="short-day">{short}</span>}
    </p>
  );
};
