import type { FC } from 'hono/jsx';
import type { FormState } from '../../src/usecases/plan/save-edit.ts';
import type { MeasuredFacts, MeasuredModel } from '../../src/usecases/yard/show-measured.ts';
import { Answer, Empty } from '../parts/answer.tsx';
import { Button } from '../parts/button.tsx';
import { FormAnswer, SaveButtons } from '../parts/form-state.tsx';
import { type DoneNotice, Notice } from '../parts/notice.tsx';
import { listText } from '../parts/quantity-text.ts';
import { changeText, MEASURED, measuredHeading, measuredText, notEnoughText } from './measured-text.ts';

const FORM = 'measured';

const Fields: FC<{ time: Pick<MeasuredFacts, 'what' | 'id'> & { minutes: string } }> = ({ time }) => (
  <>
    <input type="hidden" name="what" value={time.what} />
    <input type="hidden" name="id" value={time.id} />
    <input type="hidden" name="minutes" value={time.minutes} />
  </>
);

const Time: FC<{ time: MeasuredFacts; enough: number }> = ({ time, enough }) => (
  <li class="stock">
    <div>
      <h2>{measuredHeading(time)}</h2>
      <p>{measuredText(time)}</p>
      {!time.enough && <p class="quiet">{notEnoughText(time, enough)}</p>}
      {time.enough && time.changes.length === 0 && <p class="quiet">The figures say so.</p>}
      {time.enough && time.changes.length > 0 && (
        <>
          <p class="quiet">If it is taken over: {listText(time.changes.map(changeText))}.</p>
          <form method="post" action={MEASURED}>
            <Fields time={{ ...time, minutes: String(time.minutes.median) }} />
            <Button label={`Take it over: ${measuredHeading(time)}`}>Take it over</Button>
          </form>
        </>
      )}
    </div>
  </li>
);

/** The effect of taking a time over, before it is: the same form again, with the effect in sight. */
const Again: FC<{ state: FormState }> = ({ state }) => (
  <form id={FORM} method="post" action={MEASURED}>
    <Fields time={(state.typed ?? {}) as never} />
    <SaveButtons state={state} back={MEASURED} save="Take it over" />
  </form>
);

const answerOf = ({ times }: MeasuredModel): string => {
  const ready = times.filter(({ enough, changes }) => enough && changes.length > 0).length;
  if (times.length === 0) return 'Nothing was measured yet.';
  if (ready === 0) return 'What was measured so far changes no figure.';
  return `${ready === 1 ? 'One time is' : `${ready} times are`} measured otherwise than the figures say.`;
};

/** What the work really took, beside the figures that dates rest on. */
export const MeasuredPage: FC<{ model: MeasuredModel; state: FormState; notice: DoneNotice | null }> = ({
  model,
  state,
  notice,
}) => (
  <>
    {notice && <Notice notice={notice} today={model.today} back={MEASURED} />}
    <FormAnswer state={state} today={model.today}>
      <Again state={state} />
    </FormAnswer>
    <Answer note="By taps at the time only: from “Mixing now” to “Poured”, and from one tap to the next where one person went from task to task. What is recorded as planned or later measures nothing.">
      {answerOf(model)}
    </Answer>
    {model.times.length === 0 && (
      <Empty>
        Tap “Mixing now” as you begin a batch, and each step as it is done. Times appear here by themselves.
      </Empty>
    )}
    <ul class="stock-list">
      {model.times.map((time) => (
        <Time time={time} enough={model.enough} />
      ))}
    </ul>
    <p>
      <a href="/yard/guesses">Figures to check</a>
    </p>
    <p>
      <a href="/yard">Your yard</a>
    </p>
  </>
);
