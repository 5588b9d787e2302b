import type { FC } from 'hono/jsx';
import { Button } from '../parts/button.tsx';
import { byClock, fromClock } from '../parts/clock-text.ts';
import { listText, quantityText } from '../parts/quantity-text.ts';
import { Lines } from './amounts.tsx';
import { slipLines } from './slip-text.ts';
import type { BatchStep, PourFacts, RefusedWork } from './today-facts.ts';
import { amountOfText, cutText, forText } from './today-text.ts';
import { refusedAt, WorkForm, Wrong } from './work-form.tsx';

interface BatchStepProps {
  step: BatchStep;
  /** Work can be written down on its own day. */
  writable: boolean;
  refused: RefusedWork | null;
}

export const pourForm = ({ pours }: BatchStep): string => `pour ${pours[0]?.mould}`;

const PourLine: FC<{ pour: PourFacts }> = ({ pour }) => (
  <>
    <strong>{pour.mould}</strong>: {pour.piece} {forText(pour.customer)}
  </>
);

/** What the button says was poured; a mould that was not filled is unticked. */
const PourFields: FC<{ step: BatchStep; typed: RefusedWork['typed'] | null }> = ({ step, typed }) => (
  <ul class="pours">
    {step.pours.map((pour, row) => (
      <li>
        <input type="hidden" name={`mould${row}`} value={pour.mould} />
        <input type="hidden" name={`casting${row}`} value={pour.casting} />
        <input type="hidden" name={`order${row}`} value={pour.order ?? ''} />
        <input type="hidden" name={`sealed${row}`} value={pour.sealed ? 'yes' : ''} />
        {step.pours.length === 1 ? (
          <>
            <input type="hidden" name={`filled${row}`} value="yes" />
            <PourLine pour={pour} />
          </>
        ) : (
          <label class="choice">
            <input
              type="checkbox"
              name={`filled${row}`}
              value="yes"
              checked={typed === null || typed[`filled${row}`] === 'yes'}
            />
            <span>
              <PourLine pour={pour} />
            </span>
          </label>
        )}
      </li>
    ))}
  </ul>
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

/** A batch: what goes into it, what is poured from it, until when it can be worked. */
export const BatchStepView: FC<BatchStepProps> = ({ step, writable, refused }) => {
  const mine = refusedAt(refused, pourForm(step));
  const into = [...step.fittings.map(amountOfText), ...step.cuts.map(cutText)];
  return (
    <>
      <p class="step-what">
        Mix {quantityText(step.bags, 'bag')} of {step.mix}
      </p>
      <Lines lines={slipLines(step)} />
      {into.length > 0 && <p class="quiet">Into the moulds: {into.join('; ')}.</p>}
      <p class="quiet">
        Mixed by {fromClock(step.mixEnd)}, pour by {byClock(step.usableUntil)}.
        {step.wetUntil && ` Keep wet until ${fromClock(step.wetUntil)}.`}
      </p>
      {writable ? (
        <WorkForm deed="poured" class="pour-form">
          <input type="hidden" name="bags" value={String(step.bags)} />
          <PourFields step={step} typed={mine?.typed ?? null} />
          <Wrong message={mine?.errors.pours ?? mine?.errors.bags} id="pours" />
          <Button label={`Poured: ${listText(step.pours.map(({ mould }) => mould))}`}>Poured</Button>
        </WorkForm>
      ) : (
        <PourList step={step} />
      )}
    </>
  );
};
