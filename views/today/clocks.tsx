import type { FC } from 'hono/jsx';
import { listText } from '../../shared/list-text.ts';
import type { RefusedForm } from '../../src/usecases/plan/save-edit.ts';
import type { BatchStep } from '../../src/usecases/today/session-step.ts';
import type { SettingFacts, TodayModel } from '../../src/usecases/today/today-model.ts';
import { Button } from '../parts/button.tsx';
import { fromClock } from '../parts/clock-text.ts';
import { clockText } from '../parts/day-text.ts';
import { Wrong } from '../parts/field.tsx';
import { OtherPartsOfToday, partOfToday } from './part-of-today.tsx';
import { isOver } from './today-text.ts';
import { refusedAt, WorkForm } from './work-form.tsx';
import { PLANNING_ONLY } from './work-words.ts';

/**
 * The server's clock when the page was made. A clock on the page counts to an instant, so that a reload, a locked phone or a
 * server that is gone changes nothing of it; where the phone's own clock is wrong, this says by how much.
 */
export const ServerClock: FC<{ model: Pick<TodayModel, 'clock'> }> = ({ model }) => (
  <span data-clock-now={model.clock} hidden />
);

interface ClockProps {
  /** The instant it runs to. */
  to: string;
  /** What it says once that is there. */
  over: string;
}

/** Filled in by script; without it the instant that is written beside it does. */
const Clock: FC<ClockProps> = ({ to, over }) => <span class="clock" data-clock={to} data-over={over} hidden />;

/** How long a batch can still be worked, to the minute: it is thrown away by it. */
export const WorkingClock: FC<{ step: BatchStep; now: string }> = ({ step, now }) => {
  const { usableUntil } = step;
  const gone = isOver({ until: usableUntil }, { now });
  return (
    <p class={gone ? 'clock-line gone' : 'clock-line'} role="timer">
      {gone ? 'It was to be poured by ' : 'Pour by '}
      <strong class="clock-by">{usableUntil.slice(11, 16).replace(/^0/, '')}</strong>{' '}
      {gone ? (
        'Stiffening? Throw it away, never add water.'
      ) : (
        <Clock to={usableUntil} over="Stiffening? Throw it away, never add water." />
      )}
    </p>
  );
};

/** Minutes as they are shown, later and never earlier, and the instant of that. */
const shownFrom = (instant: string): string =>
  new Date(Math.ceil(Date.parse(instant) / SHOWN_MS) * SHOWN_MS).toISOString();
const SHOWN_MS = 5 * 60_000;

const Setting: FC<{ one: SettingFacts }> = ({ one: { mould, wetUntil, mayFrom, coveredAt } }) => (
  <li>
    <strong>{mould}</strong>
    {coveredAt && <span>covered and wet since {clockText(coveredAt)}</span>}
    {wetUntil && (
      <span>
        keep wet until {fromClock(wetUntil)} <Clock to={shownFrom(wetUntil)} over="no longer" />
      </span>
    )}
    <span>
      {mayFrom === null ? 'may be stripped now' : `may be stripped from ${fromClock(mayFrom)} `}
      {mayFrom !== null && <Clock to={shownFrom(mayFrom)} over="now" />}
    </span>
  </li>
);

/** One tap for all that somebody keeps wet, and has not said so yet. */
const Covered: FC<{ setting: readonly SettingFacts[]; refused: RefusedForm | null }> = ({ setting, refused }) => {
  const open = setting.filter(({ wetUntil, coveredAt }) => wetUntil !== null && coveredAt === null);
  return (
    <>
      <Wrong message={refusedAt(refused, 'covered')?.errors.pieces} name="pieces" />
      {open.length > 0 && (
        <WorkForm to="covered">
          {open.map(({ pieceKey }, place) => (
            <input type="hidden" name={`piece${place}`} value={pieceKey} />
          ))}
          <Button label={`Covered and wet: ${listText(open.map(({ mould }) => mould))}`}>Covered and wet</Button>
        </WorkForm>
      )}
    </>
  );
};

/** Those whose time is next. */
const CLOCKS_SHOWN = 24;

/** Pieces that set, with their clocks. */
export const SettingClocks: FC<{ model: TodayModel; refused: RefusedForm | null }> = ({ model, refused }) => {
  const { setting } = model;
  const part = partOfToday(model, setting, { list: 'setting', most: CLOCKS_SHOWN });
  return setting.length === 0 ? null : (
    <section class="clocks" id="setting">
      <h2>Setting now</h2>
      <ul>
        {part.items.map((one) => (
          <Setting one={one} />
        ))}
      </ul>
      <OtherPartsOfToday list="setting" part={part} what="piece" />
      <p class="hint">{PLANNING_ONLY}</p>
      <Covered setting={setting} refused={refused} />
      <label class="choice" data-sound hidden>
        <input type="checkbox" />
        <span>Sound when a clock has run out</span>
      </label>
    </section>
  );
};
