import type { FC } from 'hono/jsx';
import { shortMonthName } from '../../shared/day-names.ts';
import type { SeasonModel } from '../../src/usecases/season/show-season.ts';
import type { BarsSizes } from '../charts/bars-geometry.ts';
import { pairsGeometry } from '../charts/pairs-geometry.ts';
import { shortDayText } from '../parts/day-text.ts';
import { weeksTitle } from './season-text.ts';

const SIZES: BarsSizes = { width: 400, height: 84, top: 18, bottom: 18 };
const MONTH = { from: 5, to: 7 };

const monthOf = (week: string): number => Number(week.slice(MONTH.from, MONTH.to));

/** As wide as the name of a month. */
const NAME = 22;

/** The months along the weeks, each where the first of its weeks that is shown begins, if there is room for its name. */
const monthMarks = (weeks: SeasonModel['weeks']): { x: number; name: string }[] =>
  weeks.flatMap(({ week }, place) => {
    const x = (place * SIZES.width) / weeks.length;
    const isFirst = place === 0 || monthOf(week) !== monthOf(weeks[place - 1]!.week);
    return isFirst && x <= SIZES.width - NAME ? [{ x: Math.round(x), name: shortMonthName(monthOf(week)) }] : [];
  });

/** Pieces by week beside the same week of the year before; the same in figures below, folded. */
export const WeeksChart: FC<{ model: SeasonModel }> = ({ model }) => {
  const { weeks, year } = model;
  const { width, height, baseY, pairs, most } = pairsGeometry(
    weeks.map(({ pieces, before }) => ({ now: pieces, before })),
    SIZES,
  );
  return (
    <>
      <figure class="season-chart">
        <figcaption>{weeksTitle(model)}</figcaption>
        <svg viewBox={`0 0 ${width} ${height}`} aria-hidden="true" focusable="false">
          {pairs.map(({ before, now }) => (
            <>
              {before && <rect class="season-before" {...before} />}
              {now && <rect class="season-now" {...now} />}
            </>
          ))}
          {most && (
            <text x={most.x} y={most.y} text-anchor="middle">
              {most.amount}
            </text>
          )}
          {monthMarks(weeks).map(({ x, name }) => (
            <text class="season-month" x={x} y={height - 4}>
              {name}
            </text>
          ))}
          <line class="season-base" x1="0" x2={width} y1={baseY} y2={baseY} />
        </svg>
      </figure>
      <details class="message">
        <summary>Week by week in figures</summary>
        <table class="facts-table">
          <thead>
            <tr>
              <th scope="col">Week from</th>
              <th scope="col" class="number">
                {year}
              </th>
              <th scope="col" class="number">
                {year - 1}
              </th>
            </tr>
          </thead>
          <tbody>
            {weeks.map(({ week, pieces, before }) => (
              <tr>
                <th scope="row">{shortDayText(week)}</th>
                <td class="number">{pieces}</td>
                <td class="number">{before}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </details>
    </>
  );
};
