import type { Child, FC } from 'hono/jsx';
import { dayNumber } from '../../shared/time.ts';
import { type DateTrackSizes, dateTrack, type TrackDays, trackSpan } from '../charts/date-track-geometry.ts';
import { dueOf } from '../words/order-text.ts';
import type { OrderFacts } from './order-facts.ts';

const SIZES: DateTrackSizes = { width: 240, side: 7 };
const HEIGHT = 18;
const LINE = 9;

/** The days that an order's line is drawn by. */
const trackDays = (order: OrderFacts, today: string): TrackDays => {
  const due = dueOf(order);
  return {
    today: dayNumber(today),
    ready: order.readyOn === null ? null : dayNumber(order.readyOn),
    due: due === null ? null : dayNumber(due),
  };
};

/** The line that all orders of a list share. */
export const spanOf = (orders: readonly OrderFacts[], today: string) =>
  trackSpan([...orders.map((order) => trackDays(order, today)), { today: dayNumber(today), ready: null, due: null }]);

/**
 * From today to the day that was promised: full while there is work, thin while it waits, hatched where it is late; a dot for
 * ready, a flag for the day promised. It repeats what the sentence beside it says, so that nobody has to hear it twice.
 */
export const OrderTrack: FC<{ order: OrderFacts; span: { first: number; last: number }; today: string }> = ({
  order,
  span,
  today,
}) => {
  const { todayX, readyX, dueX, work, spare, late } = dateTrack(trackDays(order, today), span, SIZES);
  return (
    <svg class="order-track" viewBox={`0 0 ${SIZES.width} ${HEIGHT}`} aria-hidden="true" focusable="false">
      <line class="track-line" x1="0" x2={SIZES.width} y1={LINE} y2={LINE} />
      <line class="track-today" x1={todayX} x2={todayX} y1="1" y2={HEIGHT - 1} />
      {work && <line class="track-work" x1={work.from} x2={work.to} y1={LINE} y2={LINE} />}
      {spare && <line class="track-spare" x1={spare.from} x2={spare.to} y1={LINE} y2={LINE} />}
      {late && <line class="track-late" x1={late.from} x2={late.to} y1={LINE} y2={LINE} />}
      {dueX !== null && <path class="track-due" d={`M${dueX} ${HEIGHT}V1h6l-2 3 2 3h-6`} />}
      {readyX !== null && <circle class="track-ready" cx={readyX} cy={LINE} r="4" />}
    </svg>
  );
};

/** A mark of the lines, as the key shows it beside its word. */
const KeyMark: FC<{ width?: number; children?: Child }> = ({ width = 14, children }) => (
  <svg width={width} height="14" viewBox={`0 0 ${width} 14`} aria-hidden="true" focusable="false">
    {children}
  </svg>
);

/** What the marks of the lines stand for. */
export const TrackKey: FC = () => (
  <p class="strip-key">
    <span>
      <KeyMark>
        <line class="track-today" x1="7" x2="7" y1="0" y2="14" />
      </KeyMark>{' '}
      today
    </span>
    <span>
      <KeyMark>
        <circle class="track-ready" cx="7" cy="7" r="4" />
      </KeyMark>{' '}
      ready
    </span>
    <span>
      <KeyMark>
        <path class="track-due" d="M4 14V1h7l-2 3 2 3h-7" />
      </KeyMark>{' '}
      promised or wanted
    </span>
    <span>
      <KeyMark width={22}>
        <line class="track-late" x1="0" x2="22" y1="7" y2="7" />
      </KeyMark>{' '}
      late
    </span>
  </p>
);
