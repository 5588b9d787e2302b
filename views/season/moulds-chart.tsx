import type { FC } from 'hono/jsx';
import type { SeasonModel } from '../../src/usecases/season/show-season.ts';
import { type SharesSizes, sharesGeometry } from '../charts/shares-geometry.ts';
import { fitted } from '../turns/turns-text.ts';

const SIZES: SharesSizes = { width: 400, row: 20, bar: 12, names: 120, figures: 30 };
const LINE = 4;
/** A letter is so wide, about. */
const LETTER = 5.8;

/** What came out of each mould: good ones filled, others outlined, with how many in all; the table beside it says the same. */
export const MouldsChart: FC<{ moulds: SeasonModel['moulds'] }> = ({ moulds }) => {
  const { width, height, bar, rows } = sharesGeometry(
    moulds.map(({ good, out }) => [good, Math.max(0, out - good)]),
    SIZES,
  );
  return (
    <figure class="season-chart">
      <figcaption>What came out of each mould: good pieces filled, to mend and scrap outlined</figcaption>
      <svg viewBox={`0 0 ${width} ${height}`} aria-hidden="true" focusable="false">
        {rows.map(({ middle, y, parts, end }, place) => (
          <>
            <text x={SIZES.names - LINE * 2} y={middle + LINE} text-anchor="end">
              {fitted(moulds[place]!.name, SIZES.names - LINE * 2, LETTER)}
            </text>
            {parts.map(
              (part, n) =>
                part.width > 0 && (
                  <rect class={n === 0 ? 'season-now' : 'season-before'} {...part} y={y} height={bar} />
                ),
            )}
            <text class="season-month" x={end + LINE} y={middle + LINE}>
              {moulds[place]!.out}
            </text>
          </>
        ))}
      </svg>
    </figure>
  );
};
