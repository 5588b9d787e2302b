import type { FC } from 'hono/jsx';
import { dayNumber } from '../../shared/time.ts';
import { type WeeksSizes, weeksGeometry } from '../charts/weeks-geometry.ts';
import { dayText, shortDayText } from '../parts/day-text.ts';
import { columnsOf, shareText, type WeeksFlag, type WeeksRow } from './weeks-shown.ts';

/** On a desk and on a phone, where letters are as large. */
const SIZES: readonly (WeeksSizes & { on: string })[] = [
  { on: 'desk', width: 760, flagLine: 20, column: 84, days: 20, mark: 22, widest: 64 },
  { on: 'phone', width: 356, flagLine: 20, column: 64, days: 20, mark: 22, widest: 44 },
];
/** Rough width of a letter. */
const LETTER = 7;
const GAP = 5;

interface StripProps {
  each: 'session' | 'week';
  rows: readonly WeeksRow[];
  flags: readonly WeeksFlag[];
  /** Days of the changes that are numbered below. */
  marks: readonly string[];
  today: string;
}

/** Words beside their flag: at its right where there is room, else at its left. */
const wordsAt = (x: number, text: string, width: number) =>
  x + GAP + text.length * LETTER <= width ? { x: x + GAP, anchor: 'start' } : { x: x - GAP, anchor: 'end' };

const Drawing: FC<StripProps & { sizes: WeeksSizes & { on: string } }> = ({ rows, flags, marks, sizes }) => {
  const asked = { flags: flags.map(({ date }) => dayNumber(date)), marks: marks.map(dayNumber) };
  const drawn = weeksGeometry(columnsOf(rows), asked, sizes);
  const hatch = `weeks-hatch-${sizes.on}`;
  return (
    <svg
      class={`weeks-strip on-${sizes.on}`}
      viewBox={`0 0 ${drawn.width} ${drawn.height}`}
      aria-hidden="true"
      focusable="false"
    >
      <defs>
        <pattern id={hatch} width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <line class="weeks-ink" x1="0" y1="0" x2="0" y2="5" />
        </pattern>
      </defs>
      {drawn.columns.map(({ all, moulds, hands }) => (
        <>
          <rect class="weeks-all" {...all} />
          <rect class="weeks-moulds" {...moulds} fill={`url(#${hatch})`} />
          <rect class="weeks-hands" {...hands} />
        </>
      ))}
      <line class="weeks-ground" x1="0" x2={drawn.width} y1={drawn.groundY} y2={drawn.groundY} />
      {drawn.weeks.map(({ column, x }) => (
        <text class="weeks-day" x={x} y={drawn.groundY + 15}>
          {shortDayText(rows[column]!.date)}
        </text>
      ))}
      {flags.map(({ look }, place) => {
        const { x, y } = drawn.flags[place]!;
        return <line class={`weeks-flag ${look}`} x1={x} x2={x} y1={y - 14} y2={drawn.groundY} />;
      })}
      {flags.map(({ look, text }, place) => {
        const { x, y } = drawn.flags[place]!;
        const words = wordsAt(x, text, drawn.width);
        return (
          <text class={`weeks-flag-words ${look}`} x={words.x} y={y - 4} text-anchor={words.anchor}>
            {text}
          </text>
        );
      })}
      {drawn.marks.map(({ x, y }, place) => {
        const inside = Math.min(drawn.width - 10, Math.max(10, x));
        return (
          <>
            <circle class="weeks-mark" cx={inside} cy={y} r="9" />
            <text class="weeks-number" x={inside} y={y + 4} text-anchor="middle">
              {place + 1}
            </text>
          </>
        );
      })}
    </svg>
  );
};

const Key: FC = () => (
  <p class="strip-key">
    <span>
      <svg width="14" height="14" viewBox="0 0 14 14" aria-hidden="true" focusable="false">
        <rect class="weeks-moulds" x="1" y="1" width="12" height="12" fill="url(#weeks-hatch-key)" />
        <defs>
          <pattern
            id="weeks-hatch-key"
            width="5"
            height="5"
            patternUnits="userSpaceOnUse"
            patternTransform="rotate(45)"
          >
            <line class="weeks-ink" x1="0" y1="0" x2="0" y2="5" />
          </pattern>
        </defs>
      </svg>{' '}
      moulds taken
    </span>
    <span>
      <svg width="14" height="14" viewBox="0 0 14 14" aria-hidden="true" focusable="false">
        <rect class="weeks-hands" x="1" y="1" width="12" height="12" />
      </svg>{' '}
      hands taken
    </span>
  </p>
);

/** The same in words, a row a column. */
const InWords: FC<StripProps> = ({ each, rows, today }) => (
  <details class="message">
    <summary>{each === 'week' ? 'Week by week' : 'Session by session'}</summary>
    <table>
      <thead>
        <tr>
          <th scope="col">{each === 'week' ? 'Week with' : 'Session'}</th>
          <th scope="col">Moulds taken</th>
          <th scope="col">Hands taken</th>
        </tr>
      </thead>
      <tbody>
        {rows.map(({ date, moulds, hands }) => (
          <tr>
            <th scope="row">{dayText(date, today)}</th>
            <td>{each === 'week' ? shareText(moulds) : `${moulds.taken} of ${moulds.there}`}</td>
            <td>{shareText(hands)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  </details>
);

/** The sessions up to the date, each a column filled by how far its moulds and hands are taken, with the dates as flags. */
export const WeeksStrip: FC<StripProps> = (props) =>
  props.rows.length === 0 ? null : (
    <figure class="weeks">
      <figcaption>
        {props.each === 'week' ? 'Week by week' : 'Each session'}: how far moulds and hands are taken already
      </figcaption>
      {SIZES.map((sizes) => (
        <Drawing {...props} sizes={sizes} />
      ))}
      <Key />
      <InWords {...props} />
    </figure>
  );
