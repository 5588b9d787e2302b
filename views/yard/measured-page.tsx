import type { FC } from 'hono/jsx';
import { listText } from '../../shared/list-text.ts';
import type { FormState } from '../../src/usecases/plan/save-edit.ts';
import type { MeasuredFacts, MeasuredModel } from '../../src/usecases/yard/show-measured.ts';
import type { StripFacts } from '../../src/usecases/yard/strip-facts.ts';
import { Answer, Empty } from '../parts/answer.tsx';
import { Button } from '../parts/button.tsx';
import { FormAnswer, SaveButtons } from '../parts/form-state.tsx';
import { type DoneNotice, Notice } from '../parts/notice.tsx';
import { GOES_WRONG } from './goes-wrong-text.ts';
import {
  changeText,
  MEASURED,
  measuredHeading,
  measuredText,
  notEnoughText,
  stripsChangeText,
  stripsHeading,
  stripsText,
} from './measured-text.ts';

const FORM = 'measured';

const Fields: FC<{ time: { what: string; id: string; minutes: string } }> = ({ time }) => (
  <>
    <input type="hidden" name="what" value={time.what} />
    <input type="hidden" name="id" value={time.id} />
    <input type="hidden" name="minutes" value={time.minutes} />
  </>
);

interface MeasuredProps {
  heading: string;
  text: string;
  /** Why nothing can be taken over yet; null where it can. */
  notEnough: string | null;
  changes: readonly string[];
  taken: { what: string; id: string; minutes: string };
}

/** One thing that was measured, and what taking it over would do. */
const Measured: FC<MeasuredProps> = ({ heading, text, notEnough, changes, taken }) => (
  <li class="stock">
    <div>
      <h2>{heading}</h2>
      <p>{text}</p>
      {notEnough !== null && <p class="quiet">{notEnough}</p>}
      {notEnough === null && changes.length === 0 && <p class="quiet">The figures say so.</p>}
      {notEnough === null && changes.length > 0 && (
        <>
          <p class="quiet">If it is taken over: {listText(changes)}.</p>
          <form method="post" action={MEASURED}>
            <Fields time={taken} />
            <Button label={`Take it over: ${heading}`}>Take it over</Button>
          </form>
        </>
      )}
    </div>
  </li>
);

const Time: FC<{ time: MeasuredFacts; enough: number }> = ({ time, enough }) => (
  <Measured
    heading={measuredHeading(time)}
    text={measuredText(time)}
    notEnough={time.enough ? null : notEnoughText(time, enough)}
    changes={time.changes.map(changeText)}
    taken={{ what: time.what, id: time.id, minutes: String(time.minutes.median) }}
  />
);

const Strips: FC<{ strips: StripFacts; enough: number }> = ({ strips, enough }) => (
  <Measured
    heading={stripsHeading(strips)}
    text={stripsText(strips)}
    notEnough={strips.enough ? null : notEnoughText(strips, enough)}
    changes={strips.changes.map(stripsChangeText)}
    taken={{ what: 'strips', id: strips.mix, minutes: strips.key }}
  />
);

/** The effect of taking a time over, before it is: the same form again, with the effect in sight. */
const Again: FC<{ state: FormState }> = ({ state }) => (
  <form id={FORM} method="post" action={MEASURED}>
    <Fields time={(state.typed ?? {}) as never} />
    <SaveButtons state={state} back={MEASURED} save="Take it over" />
  </form>
);

const answerOf = ({ times, strips }: MeasuredModel): string => {
  const ready = [...times, ...strips].filter(({ enough, changes }) => enough && changes.length > 0).length;
  if (times.length + strips.length === 0) return 'Nothing was measured yet.';
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
    <Answer note="By taps at the time only: from “Mixing now” to “Mixed, filling now” and to “Poured”, and from one tap to the next where one person went from task to task. What is recorded as planned or later measures nothing. When a piece is hard is known of those that were not at their time, and of those that came out before it.">
      {answerOf(model)}
    </Answer>
    {model.times.length + model.strips.length === 0 && (
      <Empty>
        Tap “Mixing now” as you begin a batch, and each step as it is done. Times appear here by themselves.
      </Empty>
    )}
    <ul class="stock-list">
      {model.times.map((time) => (
        <Time time={time} enough={model.enough} />
      ))}
      {model.strips.map((strips) => (
        <Strips strips={strips} enough={model.enoughStrips} />
      ))}
    </ul>
    <p class="way">
      <a href="/yard/guesses">Figures to check</a>
    </p>
    <p class="way">
      <a href={GOES_WRONG}>What goes wrong, and how often</a>
    </p>
    <p class="way">
      <a href="/yard">Your yard</a>
    </p>
  </>
);
