import type { Child, FC } from 'hono/jsx';
import type { Effect, RefusedForm } from '../../src/usecases/plan/save-edit.ts';
import type { SessionHours } from '../../src/usecases/today/hours-facts.ts';
import type { TodayModel } from '../../src/usecases/today/today-model.ts';
import { Button, ButtonLink } from '../parts/button.tsx';
import { clockText } from '../parts/day-text.ts';
import { TextField, Wrong } from '../parts/field.tsx';
import { effectText } from '../parts/form-state.tsx';
import { Moves } from '../parts/moves.tsx';
import { leftOutText, morePiecesText } from './hours-text.ts';
import { refusedAt, WorkForm } from './work-form.tsx';

interface HoursFormProps {
  session: SessionHours;
  today: string;
  refused: RefusedForm | null;
}

/** What other hours would do, before they are worked: to the session, and to dates. */
const HoursEffect: FC<{ effect: Effect; today: string; children?: Child }> = ({ effect, today, children }) => {
  const { session, moved } = effect;
  return (
    <section class="warning effect" role="status" aria-label="Before it is recorded" tabindex={-1}>
      <p class="warning-lead">
        {moved.length > 0 ? effectText(moved) : 'This moves no date.'} Nothing was recorded yet.
      </p>
      {session && session.morePieces > 0 && <p>{morePiecesText(session.morePieces)}</p>}
      {session && session.leftOut.length > 0 && <p>{leftOutText(session.leftOut)}</p>}
      {moved.length > 0 && <Moves moved={moved} today={today} ahead />}
      {children}
    </section>
  );
};

interface AskedProps extends HoursFormProps {
  to: string;
  /** What the button says once the effect is in sight. */
  anyway: string;
  children?: Child;
  /** What else could be done. */
  instead?: Child;
}

/** A form whose effect is shown before it is taken. */
const AskedFirst: FC<AskedProps> = ({ to, session, today, refused, anyway, children, instead }) => {
  const mine = refusedAt(refused, to);
  if (!mine?.effect)
    return (
      <WorkForm to={to} class="field-row">
        <input type="hidden" name="session" value={session.start} />
        {children}
      </WorkForm>
    );
  const { seen: _before, act: _act, ...typed } = mine.typed;
  return (
    <HoursEffect effect={mine.effect} today={today}>
      <WorkForm to={to}>
        {Object.entries(typed).map(([name, value]) => (
          <input type="hidden" name={name} value={value} />
        ))}
        <div class="buttons">
          <Button kind="main" name="seen" value={mine.effect.seen}>
            {anyway}
          </Button>
          <ButtonLink href="/today">Leave it as it is</ButtonLink>
        </div>
      </WorkForm>
      {instead}
    </HoursEffect>
  );
};

const wrongIn = (refused: RefusedForm | null, to: string) => refusedAt(refused, to)?.errors ?? {};

/** Whoever is there at the end stays an hour longer. */
export const AnotherHour: FC<HoursFormProps> = (props) => (
  <AskedFirst {...props} to="another-hour" anyway="Work another hour">
    <Wrong message={wrongIn(props.refused, 'another-hour').session} name="session" />
    <Button>Another hour?</Button>
  </AskedFirst>
);

/** One person more, until the end. */
export const OnePersonMore: FC<HoursFormProps> = (props) => {
  const errors = wrongIn(props.refused, 'one-more');
  return (
    <AskedFirst {...props} to="one-more" anyway="One more person comes">
      <TextField
        name="at"
        id="one-more-at"
        label="One more person, from"
        type="time"
        width="short"
        value={refusedAt(props.refused, 'one-more')?.typed.at ?? ''}
        errors={{ at: errors.at ?? errors.session }}
      />
      <Button>One more person?</Button>
    </AskedFirst>
  );
};

const SHOWN_MS = 5 * 60_000;
/** A quarter of an hour is what a slip takes that is worth a word. */
const SLIP_MS = 15 * 60_000;

/** The clock a quarter of an hour from now, in fives: "10:15". */
const soon = (now: string): string => {
  const offset = Date.parse(`${now.slice(0, 16)}Z`) - Date.parse(now);
  const at = Math.ceil((Date.parse(now) + SLIP_MS) / SHOWN_MS) * SHOWN_MS;
  return new Date(at + offset).toISOString().slice(11, 16);
};

/** Behind the plan: what still fits, what does not and which days that moves; and an hour more in its place. */
export const RunningLate: FC<{ model: TodayModel; refused: RefusedForm | null }> = ({ model, refused }) => {
  const { session, today, now, underWay } = model;
  if (!session || !underWay) return null;
  const mine = refusedAt(refused, 'running-late');
  const errors = mine?.errors ?? {};
  return (
    <details class="message no-print" open={mine !== null}>
      <summary>Running late: what still fits</summary>
      <AskedFirst
        {...{ session, today, refused }}
        to="running-late"
        anyway="Go on by this plan"
        instead={<AnotherHour session={session} today={today} refused={null} />}
      >
        <TextField
          name="at"
          id="running-late-at"
          label="The next step can begin at"
          hint={`By now it is ${clockText(now)}. The rest is planned anew from then on, with as little harm to dates as can be.`}
          type="time"
          width="short"
          value={mine?.typed.at ?? soon(now)}
          errors={{ at: errors.at ?? errors.session }}
        />
        <Button>What still fits?</Button>
      </AskedFirst>
    </details>
  );
};
