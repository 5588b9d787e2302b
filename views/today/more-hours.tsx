import type { Child, FC } from 'hono/jsx';
import type { Effect, RefusedForm } from '../../src/usecases/plan/save-edit.ts';
import type { SessionHours } from '../../src/usecases/today/hours-facts.ts';
import { Button, ButtonLink } from '../parts/button.tsx';
import { TextField, Wrong } from '../parts/field.tsx';
import { Moves } from '../parts/moves.tsx';
import { effectText } from '../words/moved-text.ts';
import { leftOutText, morePiecesText } from './hours-text.ts';
import { refusedAt, WorkForm } from './work-form.tsx';

export interface HoursFormProps {
  session: SessionHours;
  today: string;
  refused: RefusedForm | null;
}

/** What other hours do, as it is shown. */
type HoursDo = Pick<Effect, 'moved' | 'session'>;

/** What becomes of the session, and of dates. */
export const Becomes: FC<{ effect: HoursDo; today: string }> = ({ effect: { session, moved }, today }) => (
  <>
    {session && session.morePieces > 0 && <p>{morePiecesText(session.morePieces)}</p>}
    {session && session.leftOut.length > 0 && <p>{leftOutText(session.leftOut)}</p>}
    {moved.length > 0 && <Moves moved={moved} today={today} ahead />}
  </>
);

/** "This moves 1 promise." */
export const movesText = ({ moved }: HoursDo): string => (moved.length > 0 ? effectText(moved) : 'This moves no date.');

/** What other hours would do, before they are worked: to the session, and to dates. */
const HoursEffect: FC<{ effect: Effect; today: string; children?: Child }> = ({ effect, today, children }) => (
  <section class="warning effect" role="status" aria-label="Before it is recorded" tabindex={-1}>
    <p class="warning-lead">{movesText(effect)} Nothing was recorded yet.</p>
    <Becomes effect={effect} today={today} />
    {children}
  </section>
);

export type Typed = Readonly<Record<string, string>>;

/** What was typed, sent along again. */
export const Hidden: FC<{ typed: Typed }> = ({ typed }) => (
  <>
    {Object.entries(typed).map(([name, value]) => (
      <input type="hidden" name={name} value={value} />
    ))}
  </>
);

/** What was typed without what is sent anew each time. */
const sentAgain = ({ seen: _before, act: _act, ...typed }: Typed): Typed => typed;

interface AskedProps extends HoursFormProps {
  to: string;
  /** The form, where several are sent to one address. */
  form?: string;
  /** What the button says once the effect is in sight. */
  anyway: string;
  children?: Child;
  /** What else could be done. */
  instead?: Child;
}

/** A form whose effect is shown before it is taken. */
export const AskedFirst: FC<AskedProps> = ({ to, form = to, session, today, refused, anyway, children, instead }) => {
  const mine = refusedAt(refused, form);
  if (!mine?.effect)
    return (
      <WorkForm to={to} class="field-row">
        <input type="hidden" name="session" value={session.start} />
        {children}
      </WorkForm>
    );
  const typed = sentAgain(mine.typed);
  return (
    <HoursEffect effect={mine.effect} today={today}>
      <WorkForm to={to}>
        <Hidden typed={typed} />
        <div class="buttons">
          <Button kind="main" name="seen" value={mine.effect.seen}>
            {anyway}
          </Button>
          <ButtonLink href="/today">Cancel</ButtonLink>
        </div>
      </WorkForm>
      {instead}
    </HoursEffect>
  );
};

/** What was wrong in a form that came back. */
export const wrongIn = (refused: RefusedForm | null, to: string) => refusedAt(refused, to)?.errors ?? {};

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
