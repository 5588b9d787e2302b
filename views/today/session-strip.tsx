import type { FC } from 'hono/jsx';
import type { TodayModel } from '../../src/usecases/today/today-model.ts';
import { boxesPath } from '../charts/boxes-path.ts';
import { rounded } from '../charts/rounded.ts';
import { type SessionGeometry, type SessionSizes, sessionGeometry } from '../charts/session-geometry.ts';
import { clockText } from '../parts/day-text.ts';
import { OtherPartsOfToday, partOfToday } from './part-of-today.tsx';
import { type DrawnLane, type DrawnSpell, minutesOfSession, sessionLanes, sessionTitle } from './session-lanes.ts';

const PHONE: SessionSizes = { width: 358, side: 14, head: 30, lane: 50, work: 8, mix: 18, ground: 22 };
const DESK: SessionSizes = { ...PHONE, width: 896, side: 20 };
const LETTER = 6.2;
/** Of "now 12:30". */
const NOW_WIDTH = 60;
/** A pail is this much narrower at its foot, on each side. */
const PAIL_SLOPE = 0.14;

type Place = SessionGeometry['lanes'][number]['spells'][number];

const Patterns: FC<{ id: string }> = ({ id }) => (
  <defs>
    <pattern id={`${id}-hatched`} width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
      <line class="strip-ink" x1="0" y1="0" x2="0" y2="5" />
    </pattern>
    <pattern id={`${id}-dotted`} width="4" height="4" patternUnits="userSpaceOnUse">
      <circle class="strip-dot" cx="2" cy="2" r="1" />
    </pattern>
    <pattern id={`${id}-wavy`} width="8" height="4" patternUnits="userSpaceOnUse">
      <path class="strip-wave" d="M0 2Q2 0 4 2T8 2" />
    </pattern>
  </defs>
);

type Look = DrawnSpell['drawn'];

const PATTERNED: readonly Look[] = ['hatched', 'dotted', 'wavy'];

/** Work that is drawn as a box; a mix is a pail. */
const BOXED = ['open', 'hatched', 'dotted', 'wavy', 'edge'] as const satisfies readonly Look[];

/** A mix: a pail as wide as it takes long, with the number of its pieces. */
const Pail: FC<{ place: Place; pieces: number }> = ({ place: { x, y, width, height }, pieces }) => {
  const foot = width * PAIL_SLOPE;
  return (
    <>
      <path
        class="pail"
        d={`M${rounded(x)} ${y}h${rounded(width)}l${rounded(-foot)} ${height}h${rounded(2 * foot - width)}z`}
      />
      {width > 12 && (
        <text class="pail-pieces" x={rounded(x + width / 2)} y={y + height - 5}>
          {pieces}
        </text>
      )}
    </>
  );
};

/** All boxes of one look, in all lanes. */
const Boxes: FC<{ look: Look; places: readonly Place[]; id: string }> = ({ look, places, id }) =>
  places.length === 0 ? null : (
    <path
      class={`spell ${look}`}
      d={boxesPath(places)}
      {...(PATTERNED.includes(look) ? { fill: `url(#${id}-${look})` } : {})}
    />
  );

/** Its word below it, where it is wide enough for that. */
const Word: FC<{ spell: DrawnSpell; place: Place; ground: number }> = ({
  spell: { word, pieces, drawn },
  place,
  ground,
}) => {
  const counted = pieces > 1 && drawn !== 'mix' ? `${word} ${pieces}` : word;
  const fits = [counted, word].find((text) => text.length * LETTER <= place.width);
  return fits ? (
    <text x={rounded(place.x + place.width / 2)} y={ground + 14}>
      {fits}
    </text>
  ) : null;
};

interface DrawingProps {
  lanes: readonly DrawnLane[];
  hours: { start: number; end: number; now: number | null };
  /** "Now 8:30" */
  nowText: string;
  sizes: SessionSizes;
  id: string;
  title: string;
}

const Drawing: FC<DrawingProps> = ({ lanes, hours, nowText, sizes, id, title }) => {
  const { width, height, nowX, ...geometry } = sessionGeometry(hours, lanes, sizes);
  const drawn = geometry.lanes.flatMap(({ spells, y: ground }, row) =>
    spells.map((place, one) => ({ place, ground, spell: lanes[row]!.spells[one]! })),
  );
  return (
    <svg class={`session-strip ${id}`} viewBox={`0 0 ${width} ${height}`} role="img" aria-label={title}>
      <Patterns id={id} />
      {geometry.hours.map(({ minute, x }) => (
        <>
          <line class="strip-hour" x1={x} x2={x} y1={16} y2={height} />
          <text class="strip-clock" x={x} y={12} data-hour>
            {Math.floor(minute / 60) % 24}
          </text>
        </>
      ))}
      {geometry.lanes.map(({ x, width: long, y }) => (
        <line class="strip-ground" x1={x} x2={x + long} y1={y} y2={y} />
      ))}
      {BOXED.map((look) => (
        <Boxes look={look} places={drawn.flatMap((one) => (one.spell.drawn === look ? one.place : []))} id={id} />
      ))}
      {drawn.map(({ spell, place, ground }) => (
        <>
          {spell.drawn === 'mix' && <Pail place={place} pieces={spell.pieces} />}
          <Word spell={spell} place={place} ground={ground} />
        </>
      ))}
      {nowX !== null && (
        <>
          <line class="strip-now" x1={nowX} x2={nowX} y1={16} y2={height} />
          <text class="strip-now-word" x={Math.min(nowX + 4, width - NOW_WIDTH)} y={26}>
            {nowText}
          </text>
        </>
      )}
    </svg>
  );
};

const KEY = [
  ['open', 'set up, coat'],
  ['hatched', 'strip'],
  ['dotted', 'pack'],
  ['wavy', 'keep wet'],
] as const;

/** Few yards have minutes to keep pieces wet: that pattern is explained where it is drawn. */
const keyOf = (lanes: readonly DrawnLane[]) =>
  KEY.filter(([drawn]) => drawn !== 'wavy' || lanes.some(({ spells }) => spells.some((one) => one.drawn === drawn)));

/** What the patterns stand for; the pail explains itself. */
const Key: FC<{ lanes: readonly DrawnLane[] }> = ({ lanes }) => (
  <p class="strip-key">
    <span>
      <svg width="22" height="14" viewBox="0 0 22 14" aria-hidden="true" focusable="false">
        <Patterns id="key" />
        <path class="pail" d="M1 1H21L18 13H4Z" />
      </svg>{' '}
      mix, with its pieces
    </span>
    {keyOf(lanes).map(([drawn, words]) => (
      <span>
        <svg width="22" height="10" viewBox="0 0 22 10" aria-hidden="true" focusable="false">
          <rect
            class={`spell ${drawn}`}
            {...{ x: 1, y: 1, width: 20, height: 8 }}
            {...(drawn === 'open' ? {} : { fill: `url(#key-${drawn})` })}
          />
        </svg>{' '}
        {words}
      </span>
    ))}
  </p>
);

/** Lanes on one page: as many as fit a screen. */
const PEOPLE_SHOWN = 6;

/** Who does what when, in words. */
const InWords: FC<{ lanes: readonly DrawnLane[] }> = ({ lanes }) => (
  <details class="message">
    <summary>{lanes.length > 1 ? 'Who does what when' : 'What is done when'}</summary>
    {lanes.map(({ hours, facts }) => (
      <div>
        <p>
          <strong>{hours}</strong>
        </p>
        <ul>
          {facts.map((fact) => (
            <li>{fact}</li>
          ))}
        </ul>
      </div>
    ))}
  </details>
);

/** A session drawn to time: a lane a person, work as long as it takes, a line for now. */
export const SessionStrip: FC<{ model: TodayModel }> = ({ model }) => {
  const { session, underWay, now } = model;
  const part = partOfToday(model, sessionLanes(model), { list: 'people', most: PEOPLE_SHOWN });
  const lanes = part.items;
  if (!session || lanes.length === 0) return null;
  const minute = minutesOfSession(session);
  const hours = { start: minute(session.start), end: minute(session.end), now: underWay ? minute(now) : null };
  const title = sessionTitle(model);
  const shared = { lanes, hours, title, nowText: `now ${clockText(now)}` };
  return (
    <figure class="session-figure" id="people">
      <figcaption>{title}</figcaption>
      <Drawing {...shared} sizes={PHONE} id="on-phone" />
      <Drawing {...shared} sizes={DESK} id="on-desk" />
      <Key lanes={lanes} />
      <OtherPartsOfToday list="people" part={part} what="person" many="people" />
      <InWords lanes={lanes} />
    </figure>
  );
};
