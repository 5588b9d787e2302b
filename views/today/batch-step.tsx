import type { FC } from 'hono/jsx';
import { listText } from '../../shared/list-text.ts';
import type { RefusedForm } from '../../src/usecases/plan/save-edit.ts';
import type { BatchStep, PourFacts } from '../../src/usecases/today/session-step.ts';
import { Button } from '../parts/button.tsx';
import { byClock, fromClock } from '../parts/clock-text.ts';
import { clockText } from '../parts/day-text.ts';
import { TextField, Wrong } from '../parts/field.tsx';
import { quantityText } from '../parts/quantity-text.ts';
import { ToldFields } from '../trace/told-fields.tsx';
import { InOrder, Lines } from './amounts.tsx';
import { AtAnotherTime, slug } from './at-another-time.tsx';
import { WorkingClock } from './clocks.tsx';
import { leftOverText, slipLines } from './slip-text.ts';
import { amountOfText, cutText, forText } from './today-text.ts';
import { Asked, isAsked, refusedAt, WorkForm } from './work-form.tsx';
import { addingLines, fillingText } from './work-words.ts';

interface BatchStepProps {
  step: BatchStep;
  now: string;
  /** Work can be written down on its own day. */
  writable: boolean;
  /** Its session is over. */
  late: boolean;
  /** All that comes before it in its moulds is over by the clock. */
  free: boolean;
  /** It is the one that is due: with all that goes into it, also where that is the recipe. */
  due: boolean;
  refused: RefusedForm | null;
}

/** What its forms are made of. */
type FormsProps = Omit<BatchStepProps, 'writable'>;

const pourForm = ({ name }: BatchStep): string => `pour ${name}`;

const PourLine: FC<{ pour: PourFacts }> = ({ pour }) => (
  <>
    <strong>{pour.mould}</strong>: {pour.piece} {forText(pour.customer)}
  </>
);

/** Which pour a row of the form is. */
const PourKey: FC<{ pour: PourFacts; row: number }> = ({ pour, row }) => (
  <>
    <input type="hidden" name={`mould${row}`} value={pour.mould} />
    <input type="hidden" name={`casting${row}`} value={pour.casting} />
    <input type="hidden" name={`order${row}`} value={pour.order ?? ''} />
    <input type="hidden" name={`sealed${row}`} value={pour.sealed ? 'yes' : ''} />
  </>
);

interface PourFieldsProps {
  step: BatchStep;
  typed: RefusedForm['typed'] | null;
}

const isTicked = (typed: RefusedForm['typed'] | null, row: number): boolean =>
  typed === null || typed[`filled${row}`] === 'yes';

/** What the button says was poured; a mould that was not filled is unticked. */
const PourFields: FC<PourFieldsProps> = ({ step, typed }) => (
  <ul class="pours">
    {step.pours.map((pour, row) => (
      <li>
        <PourKey pour={pour} row={row} />
        {step.pours.length === 1 ? (
          <>
            <input type="hidden" name={`filled${row}`} value="yes" />
            <PourLine pour={pour} />
          </>
        ) : (
          <label class="choice">
            <input type="checkbox" name={`filled${row}`} value="yes" checked={isTicked(typed, row)} />
            <span>
              <PourLine pour={pour} />
            </span>
          </label>
        )}
      </li>
    ))}
  </ul>
);

const pieceText = ({ piece, customer }: PourFacts): string => `${piece} ${forText(customer)}`;

/** The same in little room: each mould with its tick, and what is poured below. */
const ShortPourFields: FC<PourFieldsProps> = ({ step, typed }) => (
  <>
    <ul class="pours short">
      {step.pours.map((pour, row) => (
        <li>
          <PourKey pour={pour} row={row} />
          <label class="choice">
            <input
              type="checkbox"
              name={`filled${row}`}
              value="yes"
              checked={isTicked(typed, row)}
              aria-label={`${pour.mould}: ${pieceText(pour)}`}
            />
            <strong>{pour.mould}</strong>
          </label>
        </li>
      ))}
    </ul>
    <p>{[...new Set(step.pours.map(pieceText))].join('; ')}</p>
  </>
);

const PourList: FC<{ step: BatchStep }> = ({ step }) => (
  <ul class="pours">
    {step.pours.map((pour) => (
      <li>
        <PourLine pour={pour} />
      </li>
    ))}
  </ul>
);

/** When the last of its moulds is full. */
const lastFull = ({ pours }: BatchStep): string =>
  pours.map(({ until }) => until).reduce((a, b) => (Date.parse(a) > Date.parse(b) ? a : b));

const OVERDUE_MS = 15 * 60_000;

/**
 * The taps that say it was poured: just now or, once its time is well past, as it was planned, which leaves all else in
 * the plan as it was. After its session that comes first.
 */
const PouredTaps: FC<Pick<BatchStepProps, 'step' | 'now' | 'late'>> = ({ step, now, late }) => {
  const moulds = listText(step.pours.map(({ mould }) => mould));
  const full = lastFull(step);
  const clock = clockText(full);
  const planned = (kind: 'plain' | 'quiet') => (
    <Button kind={kind} name="at" value={full} label={`Poured at ${clock}: ${moulds}`}>
      Poured at {clock}
    </Button>
  );
  if (late)
    return (
      <div class="buttons">
        {planned('plain')}
        <Button kind="quiet" label={`Poured just now: ${moulds}`}>
          Poured just now
        </Button>
      </div>
    );
  return (
    <div class="buttons">
      <Button kind={isToCome(step, now) ? 'quiet' : 'plain'} label={`Poured: ${moulds}`}>
        Poured
      </Button>
      {Date.parse(now) - Date.parse(full) > OVERDUE_MS && planned('quiet')}
    </div>
  );
};

/** The maker's word that it begins at this minute, whenever it was to begin. */
const MixingNow: FC<Pick<BatchStepProps, 'step' | 'refused'> & { kind: 'plain' | 'quiet' }> = ({
  step,
  refused,
  kind,
}) => {
  const moulds = listText(step.pours.map(({ mould }) => mould));
  const mould = step.pours[0]?.mould ?? '';
  return (
    <WorkForm to="mixing">
      <input type="hidden" name="mould" value={mould} />
      <input type="hidden" name="at" value={step.at} />
      <Wrong message={refusedAt(refused, `mix ${mould} ${step.at}`)?.errors.at} name="at" />
      <Button kind={kind} label={`Mixing now: ${moulds}`}>
        Mixing now
      </Button>
    </WorkForm>
  );
};

/** That it is mixed and is filled now: with the taps before and after it, that measures what each takes. */
const FillingNow: FC<Pick<BatchStepProps, 'step' | 'refused'>> = ({ step, refused }) => {
  const moulds = step.pours.map(({ mould }) => mould);
  const named = moulds.join('\n');
  return (
    <WorkForm to="mixed">
      <input type="hidden" name="moulds" value={named} />
      <Wrong message={refusedAt(refused, `mixed ${named}`)?.errors.at} name="at" />
      <Button kind="quiet" label={`Mixed, filling now: ${listText(moulds)}`}>
        Mixed, filling now
      </Button>
    </WorkForm>
  );
};

/** Whether it is over by the clock: what went into it is gone. */
const isOverBy = (step: BatchStep, now: string): boolean => Date.parse(step.until) <= Date.parse(now);

/** Whether it is mixed by the clock: what went in is no longer looked for. */
const isMixed = ({ mixEnd }: BatchStep, now: string): boolean => Date.parse(mixEnd) <= Date.parse(now);

/** What went into the mixer, behind a line. */
const WentIn: FC<{ step: BatchStep }> = ({ step }) => (
  <details class="not-good">
    <summary aria-label={`What went in: ${listText(step.pours.map(({ mould }) => mould))}`}>What went in</summary>
    <InOrder lines={addingLines(step)} />
  </details>
);

/** Whether it has not begun by the clock: then mixing comes first. */
const isToCome = (step: BatchStep, now: string): boolean => Date.parse(step.at) > Date.parse(now);

/** Of the batch that is due all of it, in the order of the work; of one to come what is not as the recipe says. */
const WhatGoesIn: FC<Pick<BatchStepProps, 'step' | 'due' | 'now'>> = ({ step, due, now }) => {
  if (due)
    return (
      <>
        {isMixed(step, now) ? <WentIn step={step} /> : <InOrder lines={addingLines(step)} />}
        <p class="hint">{fillingText(step)}</p>
      </>
    );
  return step.bags === 1 ? <p class="quiet">By the recipe, for one bag.</p> : <Lines lines={slipLines(step)} />;
};

const Ingredients: FC<Pick<BatchStepProps, 'step' | 'due' | 'now'> & { running: boolean }> = ({
  step,
  due,
  now,
  running,
}) => {
  const into = [...step.fittings.map(amountOfText), ...step.cuts.map(cutText)];
  return (
    <>
      <WhatGoesIn step={step} due={due} now={now} />
      {step.leftOver && <p>{leftOverText(step.leftOver)}</p>}
      {!due && into.length > 0 && <p class="quiet">Into the moulds: {into.join('; ')}.</p>}
      <p class="quiet">
        Mixed by {fromClock(step.mixEnd)}
        {running ? '' : `, pour by ${byClock(step.usableUntil)}`}.
        {step.wetUntil && ` Keep wet until ${fromClock(step.wetUntil)}.`}
      </p>
    </>
  );
};

/** What a form of a batch says beside when it was. */
const BatchFields: FC<Pick<BatchStepProps, 'step' | 'refused'> & { isShort?: boolean }> = ({
  step,
  refused,
  isShort = false,
}) => {
  const fields = { step, typed: refused?.typed ?? null };
  return (
    <>
      <input type="hidden" name="step" value={step.name} />
      {isShort ? <ShortPourFields {...fields} /> : <PourFields {...fields} />}
    </>
  );
};

/** What was poured, and that it was. */
const PouredForm: FC<FormsProps> = ({ step, now, late, due, refused }) => {
  const { errors = {}, typed } = refused ?? {};
  const isShort = !due && !late && step.pours.length > 1;
  return (
    <WorkForm to="poured" class="pour-form">
      <input type="hidden" name="bags" value={String(step.bags)} />
      <BatchFields step={step} refused={refused} isShort={isShort} />
      <Wrong
        message={errors.pours ?? (typed?.when ? undefined : (errors.bags ?? errors.filledAt))}
        name={errors.pours ? 'pours' : 'filledAt'}
      />
      <PouredTaps step={step} now={now} late={late} />
    </WorkForm>
  );
};

/** Whether something is wrong with what was told of the batch beside its time. */
const isWrongIn = ({ errors }: RefusedForm): boolean =>
  ['bagDates', 'water', 'mortarCelsius', 'airCelsius', 'by', 'note'].some((name) => errors[name] !== undefined);

const PouredThen: FC<FormsProps> = ({ step, now, late, refused }) => (
  <AtAnotherTime
    id={step.name}
    to="poured"
    done="Poured"
    of={listText(step.pours.map(({ mould }) => mould))}
    label="Full at"
    also=", or otherwise"
    planned={late ? lastFull(step) : now}
    refused={refused}
  >
    <BatchFields step={step} refused={refused} />
    <TextField
      name="bags"
      id={`bags-${step.name}`}
      label="Bags"
      type="number"
      step="any"
      width="short"
      value={refused?.typed.bags ?? String(step.bags)}
      errors={refused?.errors ?? {}}
    />
    <details class="not-good" open={refused !== null && isWrongIn(refused)}>
      <summary aria-label={`What was different: ${listText(step.pours.map(({ mould }) => mould))}`}>
        What was different
      </summary>
      <ToldFields values={refused?.typed ?? {}} errors={refused?.errors ?? {}} of={`-${slug(step.name)}`} />
    </details>
  </AtAnotherTime>
);

/** The taps for a batch, and a form for another time: mixing first while it is to come, poured first once it has begun. */
const BatchForms: FC<FormsProps> = (props) => {
  const { step, now, late, refused } = props;
  const mine = refusedAt(refused, pourForm(step));
  if (isAsked(mine)) return <Asked to="poured" refused={mine} />;
  const toCome = isToCome(step, now);
  const mixing = !late && step.at !== now && (
    <MixingNow step={step} refused={refused} kind={toCome ? 'plain' : 'quiet'} />
  );
  return (
    <div class="batch-forms">
      {toCome && mixing}
      <PouredForm {...props} refused={mine} />
      {!toCome && mixing}
      {!toCome && !late && !isOverBy(step, now) && <FillingNow step={step} refused={refused} />}
      <PouredThen {...props} refused={mine} />
    </div>
  );
};

/**
 * A batch of a mould that is full by the book: it is not recorded yet, and can be begun once all before it is over, which
 * counts as done.
 */
const Waiting: FC<FormsProps> = ({ step, now, late, free, refused }) => (
  <>
    <PourList step={step} />
    {free && !late && step.at !== now && <MixingNow step={step} refused={refused} kind="plain" />}
  </>
);

/** A batch: what goes into it, what is poured from it, until when it can be worked. */
export const BatchStepView: FC<BatchStepProps> = ({ step, now, writable, late, free, due, refused }) => (
  <>
    <p class="step-what">
      Mix {quantityText(step.bags, 'bag')} of {step.mix}
    </p>
    {!late && writable && !isToCome(step, now) && <WorkingClock step={step} now={now} />}
    {!late && !isOverBy(step, now) && (
      <Ingredients {...{ step, due, now }} running={writable && !isToCome(step, now)} />
    )}
    {!writable && <PourList step={step} />}
    {writable && step.waits && <Waiting {...{ step, now, late, free, due, refused }} />}
    {writable && !step.waits && <BatchForms {...{ step, now, late, free, due, refused }} />}
  </>
);
