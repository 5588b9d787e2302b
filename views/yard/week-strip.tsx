import type { FC } from 'hono/jsx';
import { clockMinutes } from '../../shared/time.ts';
import type { YardHoursModel } from '../../src/usecases/yard/show-yard-hours.ts';
import { type WeekSizes, weekGeometry } from '../charts/week-geometry.ts';
import { dayText } from '../parts/day-text.ts';
import { hoursOfDayText, WEEK_TITLE } from './hours-words.ts';

const SIZES: WeekSizes = { width: 520, left: 92, head: 22, person: 18, gap: 8 };
const HOUR = 60;

/** The next seven days: the clock across, a bar for each stretch of hours, people who are there at once on each other. */
export const WeekStrip: FC<{ week: YardHoursModel['week']; today: string }> = ({ week, today }) => {
  const { width, height, clock, days } = weekGeometry(
    week.map(({ hours }) =>
      hours.map(({ start, end, crew }) => ({ start: clockMinutes(start), end: clockMinutes(end), people: crew })),
    ),
    SIZES,
  );
  return (
    <figure class="week-strip">
      <figcaption>{WEEK_TITLE}</figcaption>
      <svg viewBox={`0 0 ${width} ${height + 1}`} aria-hidden="true" focusable="false">
        {clock.map(({ minute, x }) => (
          <>
            <line class="week-hour" x1={x} x2={x} y1={SIZES.head - 4} y2={height} />
            <text class="week-clock" x={x} y={12} text-anchor="middle">
              {`${minute / HOUR}:00`}
            </text>
          </>
        ))}
        {days.map(({ y, height: tall, bars }, at) => (
          <>
            <text class="week-day" x={0} y={y + tall - 4}>
              {dayText(week[at]!.date, today)}
            </text>
            <line class="week-ground" x1={SIZES.left} x2={width} y1={y + tall} y2={y + tall} />
            {bars.map((bar, place) => (
              <rect class={week[at]!.hours[place]!.may === 'all' ? 'week-all' : 'week-some'} {...bar} />
            ))}
          </>
        ))}
      </svg>
      <p class="strip-key">
        <span>
          <svg width="16" height="16" viewBox="0 0 16 16" aria-hidden="true" focusable="false">
            <rect class="week-all" x="1" y="1" width="14" height="14" />
          </svg>{' '}
          one person, all work
        </span>
        <span>
          <svg width="16" height="16" viewBox="0 0 16 16" aria-hidden="true" focusable="false">
            <rect class="week-some" x="1" y="1" width="14" height="14" />
          </svg>{' '}
          not every kind of work
        </span>
      </p>
      <ul class="unseen">
        {week.map((day) => (
          <li>{hoursOfDayText(day, today)}</li>
        ))}
      </ul>
    </figure>
  );
};
