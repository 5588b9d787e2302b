import type { FC } from 'hono/jsx';
import type { TurnFacts } from '../../src/usecases/turns/turns-of-plan.ts';
import { boxesPath } from '../charts/boxes-path.ts';
import {
  type Rectangle,
  type TurnsGeometry,
  type TurnsSizes,
  turnsGeometry,
  wideAs,
} from '../charts/turns-geometry.ts';
import { dayText, weekHeading } from '../parts/day-text.ts';
import { LongList } from '../parts/long-list.tsx';
import type { TurnsShown } from './turns-shown.ts';
import { fitted, fittedApart, hoursFitted, outText, spellText, turnSentence, whomText } from './turns-text.ts';

const LEAST: TurnsSizes = { turn: 148, session: 84, tail: 28, gap: 12, row: 64, head: 78, band: 12, inset: 3 };
/** As wide as the page is on a desk, beside the names of the moulds. */
const SCREEN_WIDTH = 1100;
/** The part of the head in which the weeks stand, above the sessions. */
const WEEK_HEIGHT = 26;
const NAMES_WIDTH = 108;
const OUT_LABEL_WIDTH = 190;
/** Rough widths of a letter in the two sizes of the chart. */
const LETTER = 7.4;
const SMALL_LETTER = 6.5;

interface ChartProps {
  shown: TurnsShown;
  today: string;
  thisWeek: string;
}

const box = ({ x, y, width, height }: Rectangle) => ({ x, y, width, height });

/** The hatching of a piece that sets. */
const Hatching: FC = () => (
  <defs>
    <pattern id="setting" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
      <line class="hatch-line" x1="0" y1="0" x2="0" y2="6" />
    </pattern>
  </defs>
);

/** A heading over the sessions of each week, and a line where the next one begins. */
const Weeks: FC<ChartProps & { geometry: TurnsGeometry }> = ({ shown, today, thisWeek, geometry }) => (
  <>
    {shown.weeks.map(({ week, from, to }) => {
      const [first, last] = [geometry.columns[from]!, geometry.columns[to - 1]!];
      const edge = first.x - LEAST.gap / 2;
      return (
        <>
          {from > 0 && <line class="week-line" x1={edge} x2={edge} y1={0} y2={geometry.height} />}
          <text class="week-name" x={first.x + 6} y={16}>
            {fitted(weekHeading(week, thisWeek, today), last.x + last.width - first.x - 6, SMALL_LETTER)}
          </text>
        </>
      );
    })}
  </>
);

const Head: FC<ChartProps & { geometry: TurnsGeometry }> = ({ shown, today, geometry }) => (
  <>
    {shown.sessions.map((session, index) => {
      const { x, width } = geometry.columns[index]!;
      return (
        <>
          <rect class="session-ground" x={x} y={WEEK_HEIGHT} width={width} height={geometry.height - WEEK_HEIGHT} />
          <text class="session-day" x={x + 6} y={WEEK_HEIGHT + 20}>
            {dayText(session.date, today)}
          </text>
          <text class="session-hours" x={x + 6} y={WEEK_HEIGHT + 40}>
            {hoursFitted(session, width - 6, SMALL_LETTER)}
          </text>
        </>
      );
    })}
    {geometry.rows.map(({ y }) => (
      <line class="row-line" x1={0} x2={geometry.width} y1={y} y2={y} />
    ))}
  </>
);

interface TurnProps {
  turn: TurnFacts;
  place: TurnsGeometry['turns'][number];
  boxed: 'pour' | 'before';
  /** Whom all turns of the chart are for. */
  names: readonly string[];
  today: string;
}

const TurnBox: FC<TurnProps> = ({ turn, place, boxed, names, today }) => {
  const room = place.box.width - 12;
  const [x, y] = [place.box.x + 6, place.box.y];
  return (
    <a href={`#turn-${turn.id}`} class={boxed === 'before' ? 'poured' : undefined}>
      <title>{turnSentence(turn, today)}</title>
      <rect class="turn" {...box(place.box)} rx={3} />
      <text class="turn-name" x={x} y={y + 18}>
        {fittedApart(whomText(turn), names, room, LETTER)}
      </text>
      <text class="turn-time" x={x} y={y + 35}>
        {fitted(spellText(turn, today, boxed), room, SMALL_LETTER)}
      </text>
    </a>
  );
};

/** That pieces set, over all boxes: what is pressed there is the box below. */
const Setting: FC<{ bands: readonly Rectangle[] }> = ({ bands }) => (
  <>
    <path class="setting-ground" d={boxesPath(bands)} />
    <path class="setting" d={boxesPath(bands)} fill="url(#setting)" />
  </>
);

const Names: FC<{ shown: TurnsShown; geometry: TurnsGeometry }> = ({ shown, geometry }) => (
  <svg
    class="mould-names"
    viewBox={`0 0 ${NAMES_WIDTH} ${geometry.height}`}
    width={NAMES_WIDTH}
    height={geometry.height}
    aria-hidden="true"
    focusable="false"
  >
    <g id="turns-names">
      {shown.moulds.map(({ mould }, row) => {
        const { y } = geometry.rows[row]!;
        return (
          <>
            <line class="row-line" x1={0} x2={NAMES_WIDTH} y1={y} y2={y} />
            <text class="mould-name" x={0} y={y + 26}>
              {fitted(mould, NAMES_WIDTH - 4, LETTER)}
            </text>
          </>
        );
      })}
    </g>
  </svg>
);

const OutOfUse: FC<ChartProps & { geometry: TurnsGeometry }> = ({ shown, today, geometry }) => (
  <>
    {geometry.outs.map((place, index) => {
      const room = Math.min(place.width - 8, OUT_LABEL_WIDTH);
      return (
        <>
          <rect class="out" {...box(place)} rx={3} />
          <text class="turn-name" x={place.x + 8} y={place.y + 22}>
            {fitted(outText(shown.moulds[shown.outs[index]!.row]!, today), room - 4, SMALL_LETTER)}
          </text>
        </>
      );
    })}
  </>
);

const Drawing: FC<ChartProps & { geometry: TurnsGeometry; names: readonly string[] }> = (props) => (
  <g id="turns-drawing">
    <Head {...props} />
    <Weeks {...props} />
    <OutOfUse {...props} />
    <LongList
      items={props.shown.turns}
      draw={(turn, index) => (
        <TurnBox
          turn={turn}
          place={props.geometry.turns[index]!}
          boxed={props.shown.spans[index]!.pour === null ? 'before' : 'pour'}
          names={props.names}
          today={props.today}
        />
      )}
    />
    <Setting bands={props.geometry.turns.map(({ band }) => band)} />
  </g>
);

/** On paper nothing scrolls, so the names and the drawing are one picture as wide as the sheet. */
const OnPaper: FC<{ geometry: TurnsGeometry }> = ({ geometry }) => (
  <svg
    class="turns-paper"
    viewBox={`0 0 ${NAMES_WIDTH + geometry.width} ${geometry.height}`}
    aria-hidden="true"
    focusable="false"
  >
    <use href="#turns-names" />
    <use href="#turns-drawing" x={NAMES_WIDTH} />
  </svg>
);

/** Sessions across, moulds down, a box for every turn that leads to its line in the table below. */
export const TurnsChart: FC<ChartProps> = (props) => {
  const { shown } = props;
  const [sessions, moulds] = [shown.sessions.length, shown.moulds.length];
  const sizes = wideAs(SCREEN_WIDTH, [sessions, moulds, shown.spans], LEAST);
  const geometry = turnsGeometry(sessions, moulds, shown.spans, shown.outs, sizes);
  const names = [...new Set(shown.turns.map(whomText))];
  return (
    <figure class="turns-chart">
      <figcaption>
        Which mould is filled in which session, and for whom.
        <span class="turns-key">
          <svg width="36" height="12" viewBox="0 0 36 12" aria-hidden="true" focusable="false">
            <Hatching />
            <rect class="setting-ground" x="0" y="0" width="36" height="12" />
            <rect class="setting" x="0" y="0" width="36" height="12" fill="url(#setting)" />
          </svg>{' '}
          setting in the mould, until it is stripped
        </span>
        {shown.spans.some(({ pour }) => pour === null) && (
          <span class="turns-key poured">
            <svg width="36" height="12" viewBox="0 0 36 12" aria-hidden="true" focusable="false">
              <rect class="turn" x="0" y="0" width="36" height="12" />
            </svg>{' '}
            in the mould before the first session shown
          </span>
        )}
      </figcaption>
      <div class="turns-frame">
        <Names shown={shown} geometry={geometry} />
        <section class="scroll" tabindex={0} aria-label="Turns by session; the table below says the same">
          <svg viewBox={`0 0 ${geometry.width} ${geometry.height}`} width={geometry.width} height={geometry.height}>
            <title>Turns by session</title>
            <Drawing {...props} geometry={geometry} names={names} />
          </svg>
        </section>
      </div>
      <OnPaper geometry={geometry} />
    </figure>
  );
};
