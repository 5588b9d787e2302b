import type { FC } from 'hono/jsx';
import type { FitModel, FittedTimes } from '../../src/usecases/begin/fit-times.ts';
import { Answer } from '../parts/answer.tsx';
import { Button, ButtonLink } from '../parts/button.tsx';
import { type FieldErrors, TextField } from '../parts/field.tsx';
import { type DoneNotice, Notice } from '../parts/notice.tsx';
import { FIT, fittedAnswer, fittedNote, lastOneText, rangeText, timeWord, usualAnswer } from './begin-text.ts';

interface FitProps {
  model: FitModel;
  notice: DoneNotice | null;
  errors: FieldErrors;
  /** The number as it was typed. */
  made: string;
}

const Times: FC<{ fitted: FittedTimes }> = ({ fitted }) => (
  <table class="fit-times">
    <caption class="unseen">Minutes of handling, before and after</caption>
    <thead>
      <tr>
        <th scope="col">Minutes to</th>
        <th scope="col" class="number">
          Now
        </th>
        <th scope="col" class="number">
          Then
        </th>
      </tr>
    </thead>
    <tbody>
      {fitted.times.map((time) => (
        <tr>
          <th scope="row">{timeWord(time)}</th>
          <td class="number">{rangeText(time.before)}</td>
          <td class="number">{rangeText(time.after)}</td>
        </tr>
      ))}
    </tbody>
  </table>
);

const FirstDate: FC<{ model: FitModel; kind: 'main' | 'plain' | 'quiet'; words: string }> = ({
  model,
  kind,
  words,
}) => (
  <ButtonLink
    href={model.first === null ? '/' : `/?${new URLSearchParams({ what: `casting:${model.first}`, number: '1' })}`}
    kind={kind}
  >
    {words}
  </ButtonLink>
);

const Asking: FC<FitProps> = ({ model, errors, made }) => (
  <form class="form" method="get" action={FIT}>
    <TextField
      name="made"
      label={model.usual ? lastOneText(model.usual) : ''}
      hint="Good ones and bad ones, all that were poured."
      type="number"
      min={1}
      max={200}
      width="short"
      value={made}
      errors={errors}
    />
    <div class="buttons">
      <Button kind={model.fitted ? 'plain' : 'main'}>Work out the times</Button>
      <FirstDate
        model={model}
        kind="quiet"
        words={model.fitted ? 'Leave the times as they are' : 'I can’t say: on to the first date'}
      />
    </div>
  </form>
);

const Take: FC<{ fitted: FittedTimes }> = ({ fitted }) => (
  <form method="post" action={FIT}>
    <input type="hidden" name="made" value={String(fitted.asked)} />
    <div class="buttons">
      <Button kind="main">Take these times</Button>
    </div>
  </form>
);

/** What a usual session makes by the yard's figures, held against what the last one made. */
export const FitPage: FC<FitProps> = (props) => {
  const { model, notice } = props;
  const { fitted, usual } = model;
  const canFit = usual !== null && usual.pieces > 0;
  return (
    <>
      {notice && <Notice notice={notice} today={model.today} back={FIT} />}
      {fitted ? (
        <Answer note={fittedNote(fitted)}>{fittedAnswer(fitted)}</Answer>
      ) : (
        <Answer
          note={
            canFit
              ? 'Once it runs: the moulds come filled from the time before. If yours makes more or fewer, the times are off.'
              : 'The hours are too short for the times, or a panel, a mould or the hours are missing.'
          }
        >
          {usualAnswer(model)}
        </Answer>
      )}
      {fitted && !fitted.same && <Times fitted={fitted} />}
      {fitted && !fitted.same && <Take fitted={fitted} />}
      {fitted?.same && (
        <div class="buttons">
          <FirstDate model={model} kind="main" words="On to the first date" />
        </div>
      )}
      {canFit ? (
        <Asking {...props} />
      ) : (
        <div class="buttons">
          <ButtonLink href="/yard" kind="main">
            Put it right at Your yard
          </ButtonLink>
        </div>
      )}
    </>
  );
};
