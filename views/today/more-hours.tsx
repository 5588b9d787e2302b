import type { Child, FC } from 'hono/jsx';
import type { Effect, LeftForLater, OtherEffect, RefusedForm } from '../../src/usecases/plan/save-edit.ts';
import type { SessionHours } from '../../src/usecases/today/hours-facts.ts';
import type { TodayModel } from '../../src/usecases/today/today-model.ts';
import { Button, ButtonLink } from '../parts/button.tsx';
import { clockText } from '../parts/day-text.ts';
import { TextField, Wrong } from '../parts/field.tsx';
import { effectText } from '../parts/form-state.tsx';
import { Moves } from '../parts/moves.tsx';
import { leftForText, leftOutText, morePiecesText } from './hours-text.ts';
import { refusedAt, WorkForm } from './work-form.tsx';

interface HoursFormProps {
  session: SessionHours;
  today: string;
  refused: RefusedForm | null;
}

type SeenEffect = Pick<Effect, 'moved' | 'session'>;

/** What becomes of the session, and of dates. */
const Becomes: FC<{ effect: SeenEffect; today: string }> = ({ effect: { session, moved }, today }) => (
  <>
    {session && session.morePieces > 0 && <p>{morePiecesText(session.morePieces)}</p>}
    {session && session.leftOut.length > 0 && <p>{leftOutText(session.leftOut)}</p>}
    {moved.length > 0 && <Moves moved={moved} today={today} ahead />}
  </>
);

const movesText = ({ moved }: SeenEffect): string => (moved.length > 0 ? effectText(moved) : 'This moves no date.');

/** What other hours would do, before they are worked: to the session, and to dates. */
const HoursEffect: FC<{ effect: Effect; today: string; children?: Child }> = ({ effect, today, children }) => (
  <section class="warning effect" role="status" aria-label="Before it is recorded" tabindex={-1}>
    <p class="warning-lead">{movesText(effect)} Nothing was recorded yet.</p>
    <Becomes effect={effect} today={today} />
    {children}
  </section>
);

type Typed = Readonly<Record<string, string>>;

const Hidden: FC<{ typed: Typed }> = ({ typed }) => (
  <>
    {Object.entries(typed).map(([name, value]) => (
      <input type="hidden" name={name} value={value} />
    ))}
  </>
);

/** The same with the rest of an order left for another day: what that does instead, and the tap that takes it. */
const Otherwise: FC<{ other: OtherEffect; to: string; typed: Typed; today: string }> = ({
  other,
  to,
  typed,
  today,
}) => (
  <li>
    <p>
      <strong>Leave out {leftForText(other.without)}.</strong> {movesText(other)}
    </p>
    <Becomes effect={other} today={today} />
    <WorkForm to={to}>
      <Hidden typed={typed} />
      <input type="hidden" name="without" value={other.without.order} />
      <Button name="seen" value={other.seen} label={`Another day: ${leftForText(other.without)}`}>
        Do these another day
      </Button>
    </WorkForm>
  </li>
);

interface ChoicesProps {
  effect: Effect;
  to: string;
  typed: Typed;
  today: string;
  mayChoose: boolean;
}

/** What could be left out instead, each with what it does; first only the tap that looks, for each takes a plan. */
const Choices: FC<ChoicesProps> = ({ effect, to, typed, today, mayChoose }) => {
  if (effect.otherwise)
    return (
      <>
        <p>Or say yourself what is left out:</p>
        <ul class="done-list">
          {effect.otherwise.map((other) => (
            <Otherwise other={other} to={to} typed={typed} today={today} />
          ))}
        </ul>
      </>
    );
  const isSlip = effect.moved.length > 0 || (effect.session?.leftOut.length ?? 0) > 0;
  return mayChoose && isSlip ? (
    <WorkForm to={to}>
      <Hidden typed={typed} />
      <input type="hidden" name="choose" value="yes" />
      <Button>What could be left out instead?</Button>
    </WorkForm>
  ) : null;
};

interface AskedProps extends HoursFormProps {
  to: string;
  /** The form, where several are sent to one address. */
  form?: string;
  /** What the button says once the effect is in sight. */
  anyway: string;
  children?: Child;
  /** What else could be done. */
  instead?: Child;
  /** There is something to leave out that nobody has looked at yet. */
  mayChoose?: boolean;
}

/** A form whose effect is shown before it is taken. */
const AskedFirst: FC<AskedProps> = ({
  to,
  form = to,
  session,
  today,
  refused,
  anyway,
  children,
  instead,
  mayChoose = false,
}) => {
  const mine = refusedAt(refused, form);
  if (!mine?.effect)
    return (
      <WorkForm to={to} class="field-row">
        <input type="hidden" name="session" value={session.start} />
        {children}
      </WorkForm>
    );
  const { seen: _before, act: _act, choose: _choose, ...typed } = mine.typed;
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
      <Choices effect={mine.effect} to={to} typed={typed} today={today} mayChoose={mayChoose} />
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

/** What is still to be poured for an order can be left for another day. */
const LeaveOut: FC<HoursFormProps & { left: LeftForLater }> = ({ left, ...props }) => {
  const form = `leave ${left.order}`;
  return (
    <AskedFirst {...props} to="left-out" form={form} anyway="Do these another day">
      <input type="hidden" name="without" value={left.order} />
      <Wrong message={wrongIn(props.refused, form).session ?? wrongIn(props.refused, form).without} name="without" />
      <Button>{leftForText(left)}?</Button>
    </AskedFirst>
  );
};

/** Behind the plan: what still fits, what does not and which days that moves; what to leave out, or an hour more in its place. */
export const RunningLate: FC<{ model: TodayModel; refused: RefusedForm | null }> = ({ model, refused }) => {
  const { session, today, now, underWay, toLeave } = model;
  if (!session || !underWay) return null;
  const mine = refusedAt(refused, 'running-late');
  const errors = mine?.errors ?? {};
  const isLeaving = toLeave.some(({ order }) => refused?.form === `leave ${order}`);
  return (
    <details class="message no-print" open={mine !== null || isLeaving}>
      <summary>Running late: what still fits</summary>
      <AskedFirst
        {...{ session, today, refused }}
        to="running-late"
        anyway="Go on by this plan"
        mayChoose={toLeave.length > 0}
        instead={<AnotherHour session={session} today={today} refused={null} />}
      >
        <TextField
          name="at"
          id="running-late-at"
          label="The next step can begin at"
          hint={`By now it is ${clockText(now)}. The rest is replanned from then on, with as little harm to dates as can be.`}
          type="time"
          width="short"
          value={mine?.typed.at ?? soon(now)}
          errors={{ at: errors.at ?? errors.session }}
        />
        <Button>What still fits?</Button>
      </AskedFirst>
      {!mine?.effect && toLeave.length > 0 && (
        <div class="to-leave">
          <p>Or leave what is still to be poured for one order for another day; what that moves is shown first:</p>
          {toLeave.map((left) => (
            <LeaveOut left={left} session={session} today={today} refused={refused} />
          ))}
        </div>
      )}
    </details>
  );
};
