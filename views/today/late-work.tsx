import type { FC } from 'hono/jsx';
import type { RefusedForm } from '../../src/usecases/plan/save-edit.ts';
import type { SessionStep } from '../../src/usecases/today/session-step.ts';
import type { LateFacts, LateLine, TodayModel } from '../../src/usecases/today/today-model.ts';
import { Button } from '../parts/button.tsx';
import { Wrong } from '../parts/field.tsx';
import { LongList } from '../parts/long-list.tsx';
import { slug } from './at-another-time.tsx';
import { atPartOfToday, isGoneOnIn, OtherPartsOfToday, stepsOfToday } from './part-of-today.tsx';
import { StepView } from './step-view.tsx';
import { StepWord, ThrownAway } from './step-word.tsx';
import { lateNote, lateSessionText, workText } from './today-text.ts';
import { Asked, isAsked, isOfStep, refusedAt, WorkForm } from './work-form.tsx';

interface LateWorkProps {
  model: TodayModel;
  refused: RefusedForm | null;
}

/** The forms about more than one line of late work. */
const AS_PLANNED = 'as-planned';
const NOT_DONE = 'not-done';
const THROWN = 'thrown-away';

/** What is said at the top of the page where something is asked first, or all of it could not be recorded. */
export const lateLead = (refused: RefusedForm): string | null =>
  isAsked(refused) ? 'Nothing is recorded yet.' : refused.form === AS_PLANNED ? 'None of it was recorded.' : null;

const wrongWith = (refused: RefusedForm | null, field: string): string | undefined =>
  (refusedAt(refused, AS_PLANNED) ?? refusedAt(refused, NOT_DONE) ?? refusedAt(refused, THROWN))?.errors[field];

/** Says of a step whose time is over that it was not done. */
export const NotDone: FC<{ step: SessionStep }> = ({ step }) => (
  <StepWord to={NOT_DONE} name={step.name} step={step} word="Not done" />
);

const Line: FC<{ line: LateLine } & LateWorkProps> = ({ line: { name, step }, model, refused }) => (
  <StepView
    id={name}
    step={step}
    seen={model}
    writable={true}
    late
    due={false}
    refused={refused}
    wrong={wrongWith(refused, name)}
  >
    <NotDone step={step} />
    <ThrownAway name={name} step={step} />
  </StepView>
);

interface SessionProps extends LateWorkProps {
  late: LateFacts;
}

/** What the address calls the lines of a session. */
const listOf = ({ session }: LateFacts): string => `late-${slug(session)}`;

const isOfLine = (refused: RefusedForm | null, { name, step }: LateLine): boolean =>
  refused !== null && (isOfStep(refused, step) || wrongWith(refused, name) !== undefined);

/** The lines of one session, and one tap for none of them. */
const Lines: FC<SessionProps> = ({ late, model, refused }) => {
  const list = listOf(late);
  const named = new Map(late.lines.map((line) => [line.step, line]));
  const isMine = (step: SessionStep) => isOfLine(refused, named.get(step)!);
  const part = stepsOfToday(model, [...named.keys()], { list, isMine });
  return (
    <>
      <OtherPartsOfToday list={list} part={part} />
      <ol class="steps" id={list}>
        <LongList
          items={part.items}
          draw={(step: SessionStep) => <Line line={named.get(step)!} model={model} refused={refused} />}
        />
      </ol>
      <OtherPartsOfToday list={list} part={part} />
      {late.lines.length > 1 && (
        <WorkForm to={NOT_DONE}>
          <input type="hidden" name="session" value={late.session} />
          <Button label={`None of it was done: ${lateSessionText(late, model.today)}`}>None of it was done</Button>
        </WorkForm>
      )}
    </>
  );
};

/** Whether a form that came back is about a session, or a step of it. */
const isAbout = (refused: RefusedForm | null, { session, lines }: LateFacts): boolean =>
  (refused?.typed.session === session && !isAsked(refused)) || lines.some((line) => isOfLine(refused, line));

/** Whether a session is to be seen step by step: somebody went on in it, or a form of it came back. */
const isUnfolded = ({ model, refused }: LateWorkProps, late: LateFacts): boolean =>
  isGoneOnIn(model, listOf(late)) || isAbout(refused, late);

/** Steps of all sessions that are over, up to which each has its forms on the page. */
const STEPS_AT_ONCE = 30;

const isLong = ({ late }: TodayModel): boolean =>
  late.reduce((sum, { lines }) => sum + lines.length, 0) > STEPS_AT_ONCE;

/** One of several sessions: all of it as planned with one tap, or none, or one by one. */
const Session: FC<SessionProps> = ({ late, model, refused }) => {
  const named = lateSessionText(late, model.today);
  return (
    <details class="late-session" open={isUnfolded({ model, refused }, late)}>
      <summary>
        {named[0]?.toUpperCase()}
        {named.slice(1)}: {workText(late.lines.map(({ step }) => step))}
      </summary>
      <WorkForm to={AS_PLANNED}>
        <input type="hidden" name="session" value={late.session} />
        <input type="hidden" name="step" value={late.lines[0]?.name} />
        <Button label={`As planned: ${named}`}>This session as planned</Button>
      </WorkForm>
      {isLong(model) && !isUnfolded({ model, refused }, late) ? (
        <p class="way">
          <a href={atPartOfToday(listOf(late), 0)} aria-label={`One by one: ${named}`}>
            One by one
          </a>
        </p>
      ) : (
        <Lines late={late} model={model} refused={refused} />
      )}
    </details>
  );
};

/** What was planned for sessions that are over and is not recorded: all as planned with one tap, by session or one by one. */
export const LateWork: FC<LateWorkProps> = ({ model, refused }) => {
  const { late } = model;
  const [first] = late;
  if (!first) return null;
  const several = late.length > 1;
  return (
    <section id="late">
      <h2>Not recorded yet{several ? '' : `, ${lateSessionText(first, model.today)}`}</h2>
      <p class="quiet">{lateNote(late)}</p>
      <Wrong message={wrongWith(refused, 'late')} name="late" />
      <Asked to={AS_PLANNED} refused={refusedAt(refused, AS_PLANNED)} />
      <WorkForm to={AS_PLANNED}>
        <input type="hidden" name="all" value="yes" />
        <input type="hidden" name="step" value={first.lines[0]?.name} />
        <Button kind="main">{several ? `All ${late.length} sessions as planned` : 'All as planned'}</Button>
      </WorkForm>
      {several ? (
        <details class="message" open={late.some((session) => isUnfolded({ model, refused }, session))}>
          <summary>{late.length} sessions, one by one</summary>
          {late.map((session) => (
            <Session late={session} model={model} refused={refused} />
          ))}
          <WorkForm to={NOT_DONE}>
            <input type="hidden" name="all" value="yes" />
            <Button kind="quiet">None of it was done in all {late.length} sessions</Button>
          </WorkForm>
        </details>
      ) : (
        <Lines late={first} model={model} refused={refused} />
      )}
    </section>
  );
};
