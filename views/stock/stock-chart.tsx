import type { FC } from 'hono/jsx';
import { dayNumber } from '../../shared/time.ts';
import type { SpokenForModel } from '../../src/usecases/stock/show-spoken-for.ts';
import { type StockSizes, stockGeometry } from '../charts/stock-geometry.ts';
import { dayText } from '../parts/day-text.ts';
import { amountText } from '../parts/quantity-text.ts';
import { chartTitle } from './spoken-for-text.ts';

/** On a desk and on a phone, where letters are as large. */
const SIZES: readonly (StockSizes & { on: string })[] = [
  { on: 'desk', width: 900, height: 170, left: 64, top: 24, bottom: 28 },
  { on: 'phone', width: 350, height: 150, left: 48, top: 24, bottom: 28 },
];
/** Rough width of a letter. */
const LETTER = 7;

/** The days that stand beside the line: what comes, and the day it runs short; none so near to another that they touch. */
const labelsOf = (model: SpokenForModel, points: readonly { x: number; y: number }[], width: number) => {
  const { steps, shortOn, today } = model;
  let free = 0;
  return steps.flatMap(({ kind, on, quantity }, at) => {
    const isShort = on === shortOn && steps.findIndex((step) => step.short > 0) === at;
    if (kind !== 'comes' && !isShort) return [];
    const { x, y } = points[at]!;
    const text = isShort ? `short ${dayText(on, today)}` : `+${amountText(quantity, '')} ${dayText(on, today)}`;
    const long = text.length * LETTER;
    // Where there is no room at its right, it stands at the left of its day.
    const from = x + 4 + long > width ? x - 4 - long : x + 4;
    if (from < free) return [];
    free = from + long;
    return [{ x: from, y: isShort ? y - 8 : Math.max(14, y - 6), mark: isShort ? x : null, text }];
  });
};

const Chart: FC<{ model: SpokenForModel; sizes: StockSizes & { on: string } }> = ({ model, sizes }) => {
  const { inYard, past, steps, today, unit } = model;
  const levels = steps.map(({ on, left }) => ({ day: dayNumber(on), left }));
  const last = Math.max(dayNumber(today) + 7, ...levels.map(({ day }) => day + 1));
  const drawn = stockGeometry(inYard - past, levels, { first: dayNumber(today), last }, sizes);
  const title = `chart-title-${sizes.on}`;
  const lastDay = dayText(steps.at(-1)?.on ?? today, today);
  return (
    <svg
      class={`stock-chart on-${sizes.on}`}
      viewBox={`0 0 ${drawn.width} ${drawn.height}`}
      width={drawn.width}
      height={drawn.height}
      role="img"
      aria-labelledby={title}
    >
      <title id={title}>{chartTitle(model)}</title>
      <line class="ground" x1={sizes.left} x2={drawn.width} y1={drawn.noneY} y2={drawn.noneY} />
      <text x={0} y={drawn.mostY + 4}>
        {amountText(drawn.most, unit)}
      </text>
      <text x={0} y={drawn.noneY + 4}>
        none
      </text>
      <path class="level" d={drawn.line} />
      {labelsOf(model, drawn.points, drawn.width).map(({ x, y, mark, text }) => (
        <>
          {mark !== null && <line class="short" x1={mark} x2={mark} y1={sizes.top} y2={drawn.noneY} />}
          <text class={mark === null ? '' : 'short-day'} x={x} y={y}>
            {text}
          </text>
        </>
      ))}
      <text x={sizes.left} y={drawn.height - 6}>
        today
      </text>
      {steps.length > 0 && (
        <text x={drawn.width} y={drawn.height - 6} text-anchor="end">
          {lastDay}
        </text>
      )}
    </svg>
  );
};

/** How much there is of a material as the plan uses it, as a stepped line; the same stands in the table below it. */
export const StockChart: FC<{ model: SpokenForModel }> = ({ model }) => (
  <div class="stock-charts">
    {SIZES.map((sizes) => (
      <Chart model={model} sizes={sizes} />
    ))}
  </div>
);
