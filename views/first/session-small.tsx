import type { FC } from 'hono/jsx';
import type { NextSession, WorkAhead } from '../../src/usecases/first/next-session.ts';
import { boxesPath } from '../charts/boxes-path.ts';
import { type SessionSizes, sessionGeometry } from '../charts/session-geometry.ts';
import { inLanes } from './session-lanes.ts';

const SIZES: SessionSizes = { width: 340, side: 16, head: 18, lane: 22, work: 8, mix: 14, ground: 18 };
const MINUTE_MS = 60_000;

/** Minutes since midnight, by the clock at the start of the session. */
const minutesFrom = (start: string): ((instant: string) => number) => {
  const first = Number(start.slice(11, 13)) * 60 + Number(start.slice(14, 16));
  return (instant) => first + (Date.parse(instant) - Date.parse(start)) / MINUTE_MS;
};

const LOOKS: Readonly<Record<WorkAhead['kind'], string>> = {
  mix: 'small-mix',
  'set up': 'small-open',
  strip: 'small-strip',
  pack: 'small-pack',
};

const KINDS = ['mix', 'set up', 'strip', 'pack'] as const satisfies readonly WorkAhead['kind'][];

/** The next session drawn small, to time: mixes stand tall, the rest is low. All of it is in words beside it. */
export const SessionSmall: FC<{ session: NextSession }> = ({ session }) => {
  const minute = minutesFrom(session.start);
  const hours = { start: minute(session.start), end: minute(session.end) };
  const lanes = inLanes(
    session.work.map(({ kind, start, end }) => ({ kind, start: minute(start), end: minute(end), mix: kind === 'mix' })),
  );
  const drawn = sessionGeometry(
    { ...hours, now: null },
    lanes.map((spells) => ({ ...hours, spells })),
    SIZES,
  );
  return (
    <svg class="session-small" viewBox={`0 0 ${drawn.width} ${drawn.height}`} aria-hidden="true" focusable="false">
      <defs>
        <pattern id="small-hatch" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <line class="weeks-ink" x1="0" y1="0" x2="0" y2="5" />
        </pattern>
      </defs>
      {drawn.hours.map(({ minute: at, x }) => (
        <>
          <line class="strip-hour" x1={x} x2={x} y1="14" y2={drawn.height} />
          <text class="small-clock" x={x} y="11" text-anchor="middle" data-hour>
            {Math.floor(at / 60) % 24}
          </text>
        </>
      ))}
      {drawn.lanes.map(({ x, width, y }) => (
        <line class="weeks-ground" x1={x} x2={x + width} y1={y} y2={y} />
      ))}
      {KINDS.map((kind) => {
        const places = drawn.lanes.flatMap(({ spells }, lane) =>
          spells.filter((_, one) => lanes[lane]![one]!.kind === kind),
        );
        return (
          places.length > 0 && (
            <path
              class={LOOKS[kind]}
              d={boxesPath(places)}
              {...(kind === 'strip' ? { fill: 'url(#small-hatch)' } : {})}
            />
          )
        );
      })}
    </svg>
  );
};
