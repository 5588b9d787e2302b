import type { Child, FC } from 'hono/jsx';
import { listText } from '../../shared/list-text.ts';
import type { RefusedForm } from '../../src/usecases/plan/save-edit.ts';
import type { CoatStep, PackStep, PrepStep, SessionStep, StripStep } from '../../src/usecases/today/session-step.ts';
import type { TodayModel } from '../../src/usecases/today/today-model.ts';
import { Button } from '../parts/button.tsx';
import { TextField, Wrong } from '../parts/field.tsx';
import { Mark } from '../parts/mark.tsx';
import { InOrder } from './amounts.tsx';
import { AtAnotherTime } from './at-another-time.tsx';
import { BatchStepView } from './batch-step.tsx';
import { Before } from './before-step.tsx';
import { PackPieces, PiecesToTake } from './pack-pieces.tsx';
import { StepCaution } from './step-caution.tsx';
import { StripForms } from './strip-forms.tsx';
import {
  amountOfText,
  coatText,
  cutText,
  dryText,
  EDGE_WORDS,
  forText,
  mayText,
  packedWord,
  packText,
  partText,
  prepText,
  stepHours,
  underWayText,
} from './today-text.ts';
import { Asked, isAsked, refusedAt, WorkForm } from './work-form.tsx';
import { STRIP_CHECK, setUpLines } from './work-words.ts';

interface StepProps<S> {
  step: S;
  /** What else of the page a step is seen with. */
  seen: Pick<TodayModel, 'now' | 'waiting' | 'toPack' | 'today'>;
  writable: boolean;
  /** Its session is over: it is written down as it was planned. */
  late: boolean;
  /** It is the one that is due: all of it is said. */
  due: boolean;
  refused: RefusedForm | null;
}

/** When work of a session that is over was done: as it was planned. */
const AsPlanned: FC<Pick<StepProps<SessionStep>, 'step' | 'late'>> = ({ step, late }) =>
  late ? <input type="hidden" name="at" value={step.until} /> : null;

interface ReadyFormsProps extends Omit<StepProps<CoatStep | PrepStep>, 'writable' | 'due'> {
  /** Where it is sent, and the kind of its refusal there. */
  to: string;
  kind: string;
  /** What the button says, and what was done where a time is told. */
  label: string;
  done: string;
  /** What it says beside when it was. */
  fields: Child;
}

/** That a mould is coated, or set up: just now, or at another time. */
const ReadyForms: FC<ReadyFormsProps> = ({ step, seen, late, refused, to, kind, label, done, fields }) => {
  const mine = refusedAt(refused, `${kind} ${step.name}`);
  return (
    <div class="strip-forms">
      <WorkForm to={to}>
        {fields}
        <AsPlanned step={step} late={late} />
        <Wrong message={mine?.typed.when ? undefined : (mine?.errors.mould ?? mine?.errors.at)} name="mould" />
        <Button label={`${label}: ${step.mould}`}>{label}</Button>
      </WorkForm>
      <AtAnotherTime
        id={step.name}
        to={to}
        done={done}
        of={step.mould}
        label={`${done} at`}
        planned={late ? step.until : seen.now}
        refused={mine}
      >
        <Wrong message={mine?.typed.when ? mine.errors.mould : undefined} name="mould" />
        {fields}
      </AtAnotherTime>
    </div>
  );
};

/** What a sealing coat says beside when it was. */
const CoatFields: FC<{ step: CoatStep }> = ({ step }) => (
  <>
    <input type="hidden" name="mould" value={step.mould} />
    <input type="hidden" name="step" value={step.name} />
  </>
);

const Coat: FC<StepProps<CoatStep>> = ({ step, writable, ...rest }) => (
  <>
    <p class="step-what">{coatText(step)}</p>
    <p>{dryText(step)}</p>
    {writable && !step.waits && (
      <ReadyForms
        {...{ step, to: 'coated', kind: 'coat', label: 'Coated', done: 'Coated', ...rest }}
        fields={<CoatFields step={step} />}
      />
    )}
  </>
);

/** What is to be done to a mould in one sentence, and what is cut for it in another: somebody may do that meanwhile. */
const PrepBrief: FC<{ step: PrepStep }> = ({ step }) => {
  const words = prepText(step);
  return (
    <p>
      {words[0]?.toUpperCase()}
      {words.slice(1)}.{step.cuts.length > 0 && ` To cut: ${listText(step.cuts.map(cutText))}.`}
    </p>
  );
};

/** What a set-up says beside when it was. */
const PrepFields: FC<{ step: PrepStep }> = ({ step }) => (
  <>
    <input type="hidden" name="mould" value={step.mould} />
    <input type="hidden" name="casting" value={step.casting} />
    <input type="hidden" name="sealed" value={step.sealed ? 'yes' : ''} />
    <input type="hidden" name="step" value={step.name} />
  </>
);

const Prep: FC<StepProps<PrepStep>> = ({ step, writable, ...rest }) => (
  <>
    <p class="step-what">Set up {step.mould}</p>
    {rest.due ? <InOrder lines={setUpLines(step)} /> : <PrepBrief step={step} />}
    {writable && !step.waits && (
      <ReadyForms
        {...{ step, to: 'prepared', kind: 'prep', label: 'Ready to pour', done: 'Ready', ...rest }}
        fields={<PrepFields step={step} />}
      />
    )}
  </>
);

/** Who looks at a piece a little before its time may see that it is not hard. */
const SOON_MS = 10 * 60_000;

const Strip: FC<StepProps<StripStep>> = ({ step, seen, writable, late, due, refused }) => (
  <>
    <p class="step-what">Strip {step.mould}</p>
    <p>
      {step.piece} {forText(step.customer)}. {mayText(step.mayFrom, { now: seen.now, today: step.at.slice(0, 10) })}.
      {step.people > 1 && ` It takes ${step.people} people.`}
    </p>
    {due && <p>{STRIP_CHECK}</p>}
    {writable && step.inMould && (
      <StripForms
        mould={step.mould}
        pieceKey={step.pieceKey}
        at={late ? step.until : null}
        now={seen.now}
        due={!late && Date.parse(step.at) <= Date.parse(seen.now) + SOON_MS}
        refused={refused}
      />
    )}
  </>
);

const Counted: FC<{ refused: RefusedForm | null }> = ({ refused }) =>
  refused?.errors.evenShort ? (
    <label class="choice">
      <input type="checkbox" name="evenShort" value="yes" />
      <span>I have counted; it is all there</span>
    </label>
  ) : null;

const PackForms: FC<Omit<StepProps<PackStep>, 'writable' | 'due'>> = ({ step, seen, late, refused }) => {
  if (isAsked(refused)) return <Asked to="packed" refused={refused} />;
  const { errors = {}, typed = null } = refused ?? {};
  const pieces = seen.toPack[step.order] ?? [];
  const which = <PackPieces pieces={pieces} today={seen.today} typed={typed} wrong={errors.pieces} />;
  return (
    <div class="strip-forms">
      <WorkForm to="packed">
        <input type="hidden" name="order" value={step.order} />
        <input type="hidden" name="step" value={step.name} />
        <AsPlanned step={step} late={late} />
        <Wrong message={errors.order ?? errors.evenShort} name="evenShort" />
        <Counted refused={refused} />
        {which}
        <Button label={`${packedWord(step)}: ${step.customer}`}>{packedWord(step)}</Button>
      </WorkForm>
      <AtAnotherTime
        id={step.name}
        to="packed"
        done={packedWord(step)}
        of={step.customer}
        label="Packed at"
        planned={late ? step.until : seen.now}
        refused={refused}
        {...(step.part ? { also: ', or not so long' } : {})}
      >
        <input type="hidden" name="order" value={step.order} />
        <input type="hidden" name="step" value={step.name} />
        {step.part && (
          <TextField
            name="minutes"
            id={`minutes-${step.name}`}
            label="Minutes packed"
            type="number"
            width="short"
            value={refused?.typed.minutes ?? String(step.part.minutes)}
            errors={errors}
          />
        )}
        <Counted refused={refused} />
        {which}
      </AtAnotherTime>
    </div>
  );
};

const Pack: FC<StepProps<PackStep>> = ({ step, seen, writable, late, refused }) => {
  const mine = refusedAt(refused, `pack ${step.order}`);
  const into = [...step.parts.map(amountOfText), ...step.cuts.map(cutText)];
  return (
    <>
      <p class="step-what">{packText(step)}</p>
      {step.part && <p>{partText(step)}</p>}
      <p>
        {listText(
          step.contents.map(({ name, quantity, unit }) => amountOfText({ name, quantity, unit: unit || 'each' })),
        )}
        .
      </p>
      {into.length > 0 && <p class="quiet">With it: {listText(into)}.</p>}
      {writable && <PiecesToTake pieces={seen.toPack[step.order] ?? []} today={seen.today} />}
      {writable && <PackForms step={step} seen={seen} late={late} refused={mine} />}
    </>
  );
};

/** Whether all that a step waits for is over by the clock. */
const isFree = ({ name }: SessionStep, { waiting }: Pick<TodayModel, 'waiting'>): boolean =>
  waiting.some(({ step }) => step === name);

const Content: FC<StepProps<SessionStep>> = ({ step, ...rest }) => {
  if (step.kind === 'coat') return <Coat step={step} {...rest} />;
  if (step.kind === 'prep') return <Prep step={step} {...rest} />;
  if (step.kind === 'batch')
    return <BatchStepView step={step} now={rest.seen.now} free={isFree(step, rest.seen)} {...rest} />;
  if (step.kind === 'strip') return <Strip step={step} {...rest} />;
  if (step.kind === 'pack') return <Pack step={step} {...rest} />;
  return <p class="step-what">{EDGE_WORDS[step.kind]}</p>;
};

interface LineProps extends StepProps<SessionStep> {
  id?: string | undefined;
  /** It has begun by the clock, and is not over. */
  begun?: boolean;
  /** What was wrong with it where it was written down together with others. */
  wrong?: string | undefined;
  /** What else can be said of it. */
  children?: Child;
}

const UnderWay: FC<Pick<LineProps, 'step'>> = ({ step }) => (
  <p class="begun">
    <Mark shape="half" /> {underWayText(step)}
  </p>
);

/** One line of the timed list: from when to when, what, and the button that says it is done. */
export const StepView: FC<LineProps> = ({ id, begun = false, wrong, children, ...props }) => {
  const { from, to } = stepHours(props.step);
  return (
    <li
      class={`step step-${props.step.kind.replace(' ', '-')}`}
      id={id}
      data-begun={begun ? 'yes' : undefined}
      data-due={props.due ? 'yes' : undefined}
    >
      <p class="step-time">
        {from}
        {to && <span class="quiet"> to {to}</span>}
      </p>
      <div class="step-content">
        {begun && <UnderWay step={props.step} />}
        <Content {...props} />
        {props.writable && <Before step={props.step} waiting={props.seen.waiting} refused={props.refused} />}
        <Wrong message={wrong} name={props.step.name} {...(id ? { at: id } : {})} />
      </div>
      {props.due && <StepCaution step={props.step} />}
      {children && <div class="step-aside">{children}</div>}
    </li>
  );
};
