import type { FC } from 'hono/jsx';
import type { LeftForLater, RefusedForm, SeenEffect } from '../../src/usecases/plan/save-edit.ts';
import type { SlipAnswer, SlipModel } from '../../src/usecases/today/slip-answers.ts';
import type { TodayModel } from '../../src/usecases/today/today-model.ts';
import { Button, ButtonLink } from '../parts/button.tsx';
import { clockText } from '../parts/day-text.ts';
import { TextField, Wrong } from '../parts/field.tsx';
import { leftForText } from './hours-text.ts';
import {
  AnotherHour,
  AskedFirst,
  Becomes,
  Hidden,
  type HoursFormProps,
  movesText,
  type Typed,
  wrongIn,
} from './more-hours.tsx';
import { isGoneOnIn, OtherPartsOfToday, partOfToday } from './part-of-today.tsx';
import { retimedLine, retimedText, TOO_LONG, tooLateText } from './running-late-text.ts';
import { refusedAt, WorkForm } from './work-form.tsx';

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

/** Where a slip is asked about, and, with an order, what leaving out the rest of that would do. */
const slipPath = (typed: Typed, without = ''): string =>
  `/today/running-late?${new URLSearchParams({
    ...{ session: typed.session ?? '', at: typed.at ?? '' },
    ...(without === '' ? {} : { without }),
  })}`;

/** The page of it, from where the slip stands in it: without script nothing leads there. */
export const slipPage = (typed: Typed, without = ''): string => `${slipPath(typed, without)}#slip`;

interface SlipProps {
  typed: Typed;
  today: string;
}

/** What a slip does to dates, once that is worked out, and the tap that takes it. */
export const SlipDates: FC<SlipProps & { effect: SeenEffect | null }> = ({ effect, typed, today }) => (
  <div>
    <p class="warning-lead">{effect ? movesText(effect) : TOO_LONG}</p>
    {effect && <Becomes effect={effect} today={today} />}
    <WorkForm to="running-late">
      <Hidden typed={typed} />
      <div class="buttons">
        <Button kind="main" name="seen" value={effect?.seen ?? ''}>
          Go on by this plan
        </Button>
        <ButtonLink href="/today">Cancel</ButtonLink>
      </div>
    </WorkForm>
  </div>
);

/** The same with the rest of an order left for another day: what that does instead, and the tap that takes it. */
export const SlipChoice: FC<SlipProps & { left: LeftForLater; effect: SeenEffect | null }> = ({
  left,
  effect,
  typed,
  today,
}) => (
  <li>
    <p>
      <strong>Leave out {leftForText(left)}.</strong> {effect ? movesText(effect) : TOO_LONG}
    </p>
    {effect && <Becomes effect={effect} today={today} />}
    <WorkForm to="running-late">
      <Hidden typed={typed} />
      <Button name="seen" value={effect?.seen ?? ''} label={`Another day: ${leftForText(left)}`}>
        Do these another day
      </Button>
    </WorkForm>
  </li>
);

interface AskedForProps extends SlipProps {
  answers: readonly SlipAnswer[];
}

/** What a slip does to dates: as it was worked out, or in its place what asks for it. */
const Dates: FC<AskedForProps> = ({ answers, typed, today }) => {
  const known = answers.find(({ without }) => without === '');
  if (known) return <SlipDates {...{ typed, today }} effect={known.effect} />;
  return (
    <div data-hx-get={slipPath(typed)} data-hx-trigger="load" data-hx-swap="outerHTML">
      <p>
        {answers.length === 0 ? (
          'Which days it moves is being worked out. Work can go on meanwhile.'
        ) : (
          <a href={slipPage(typed)}>Which days does it move?</a>
        )}
      </p>
    </div>
  );
};

/** The same of one thing that could be left out. */
const Choice: FC<AskedForProps & { left: LeftForLater }> = ({ answers, left, typed, today }) => {
  const known = answers.find(({ without }) => without === left.order);
  if (known) return <SlipChoice {...{ left, today }} typed={{ ...typed, without: left.order }} effect={known.effect} />;
  return (
    <li data-hx-get={slipPath(typed, left.order)} data-hx-trigger="load" data-hx-swap="outerHTML">
      <p>
        <a href={slipPage(typed, left.order)}>{leftForText(left)}</a>
        {answers.length === 0 ? ': what that moves is being worked out.' : ': what would that move?'}
      </p>
    </li>
  );
};

/** The session as it would be at once; dates, and each thing that could be left out, come one after the other, or stand there already. */
const Slip: FC<{ slip: SlipModel; typed: Typed; today: string }> = ({ slip: { retimed, answers }, ...asked }) => (
  <section id="slip" class="warning effect" role="status" aria-label="Before it is recorded" tabindex={-1}>
    <p class="warning-lead">{retimedText(retimed)} Nothing was recorded yet.</p>
    {retimed.tooLate.length > 0 && <p>{tooLateText(retimed)}</p>}
    {retimed.minutes > 0 && (
      <details class="message">
        <summary>Its times then</summary>
        <ul class="sentences">
          {retimed.steps.map((step) => (
            <li>{retimedLine(step)}</li>
          ))}
        </ul>
      </details>
    )}
    <Dates {...asked} answers={answers} />
    {retimed.toLeave.length > 0 && (
      <>
        <p>Or say yourself what is left out:</p>
        <ul class="done-list">
          {retimed.toLeave.map((left) => (
            <Choice {...asked} answers={answers} left={left} />
          ))}
        </ul>
      </>
    )}
  </section>
);

/** Orders that can be left for another day, each with a form of its own. */
const ORDERS_SHOWN = 8;

interface RunningLateProps {
  model: TodayModel;
  refused: RefusedForm | null;
  /** A slip that was asked about; null where none was. */
  slip: SlipModel | null;
}

/** Behind the plan: what still fits, what does not and which days that moves; what to leave out, or an hour more in its place. */
export const RunningLate: FC<RunningLateProps> = ({ model, refused, slip }) => {
  const { session, today, now, underWay, toLeave } = model;
  if (!session || !underWay) return null;
  const mine = refusedAt(refused, 'running-late');
  const errors = mine?.errors ?? {};
  const isMine = ({ order }: LeftForLater) => refused?.form === `leave ${order}`;
  const part = partOfToday(model, toLeave, { list: 'leave', most: ORDERS_SHOWN, isMine });
  const hour = <AnotherHour session={session} today={today} refused={null} />;
  return (
    <details
      class="message no-print"
      id="leave"
      open={mine !== null || toLeave.some(isMine) || isGoneOnIn(model, 'leave')}
    >
      <summary>Running late: what still fits</summary>
      {mine && slip ? (
        <>
          <Slip slip={slip} typed={{ session: session.start, at: mine.typed.at ?? '' }} today={today} />
          {hour}
        </>
      ) : (
        <AskedFirst {...{ session, today, refused }} to="running-late" anyway="Go on by this plan" instead={hour}>
          <TextField
            name="at"
            id="running-late-at"
            label="The next step can begin at"
            hint={`By now it is ${clockText(now)}. The rest is replanned from then on, with as little harm to dates as can be.`}
            type="time"
            width="short"
            value={mine?.typed.at ?? soon(now)}
            errors={{ at: errors.at ?? errors.session ?? errors.without }}
          />
          <Button>What still fits?</Button>
        </AskedFirst>
      )}
      {!slip && toLeave.length > 0 && (
        <div class="to-leave">
          <p>Or leave what is still to be poured for one order for another day; what that moves is shown first:</p>
          {part.items.map((left) => (
            <LeaveOut left={left} session={session} today={today} refused={refused} />
          ))}
          <OtherPartsOfToday list="leave" part={part} what="order" />
        </div>
      )}
    </details>
  );
};
