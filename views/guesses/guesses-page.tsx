import type { FC } from 'hono/jsx';
import { plural } from '../../shared/plural.ts';
import type { GuessesModel, GuessGroup } from '../../src/usecases/yard/show-guesses.ts';
import { Answer } from '../parts/answer.tsx';
import { Button } from '../parts/button.tsx';
import { type FieldErrors, FormErrors } from '../parts/field.tsx';
import { type DoneNotice, Notice } from '../parts/notice.tsx';
import { countWord } from '../parts/quantity-text.ts';
import { MEASURED } from '../yard/measured-text.ts';
import { guessEdits, guessValue, guessWords, inGuessOrder } from './guess-text.ts';

export const GUESSES = '/yard/guesses';

interface GuessesProps {
  model: GuessesModel;
  notice: DoneNotice | null;
  errors: FieldErrors;
}

const guessesAnswer = ({ groups }: GuessesModel): string => {
  if (groups.length === 0) return 'No figure is left to check.';
  return `${countWord(groups.length)} ${plural(groups.length, 'figure is', 'figures are')} still to check.`;
};

const HEADINGS: Readonly<Record<GuessGroup['kind'], string>> = {
  ...{
    yard: 'The yard',
    mix: 'The mix',
    casting: 'The panels',
    mould: 'The moulds',
    material: 'The bags',
    kit: 'The kits',
  },
};

const Guess: FC<{ group: GuessGroup }> = ({ group }) => {
  const words = guessWords(group);
  return (
    <li>
      <p>
        {words}: <strong>{guessValue(group)}</strong>.
      </p>
      <form method="post" action={`${GUESSES}/right`} data-hx-post={`${GUESSES}/right`} data-hx-target="#page">
        <input type="hidden" name="kind" value={group.kind} />
        <input type="hidden" name="figure" value={group.figure} />
        <div class="buttons">
          <Button label={`That is right: ${words}`}>That is right</Button>
          {guessEdits(group).map(({ text, path }) => (
            <a href={path} aria-label={`${text}: ${words}`}>
              {text}
            </a>
          ))}
        </div>
      </form>
    </li>
  );
};

/** The figures nobody has confirmed, in words, each to be confirmed or changed. */
export const GuessesPage: FC<GuessesProps> = ({ model, notice, errors }) => {
  const groups = inGuessOrder(model.groups);
  const kinds = [...new Set(groups.map(({ kind }) => kind))];
  return (
    <>
      {notice && <Notice notice={notice} today={model.today} back={GUESSES} />}
      <FormErrors errors={errors} lead="Nothing was changed." />
      <Answer
        note={
          model.groups.length > 0
            ? "Dates and batches rest on them. Look at your bag's data sheet, weigh a panel, time a Saturday. What you change counts as said."
            : 'Every date rests on figures that you have said or confirmed.'
        }
      >
        {guessesAnswer(model)}
      </Answer>
      {kinds.map((kind) => (
        <section>
          <h2>{HEADINGS[kind]}</h2>
          <ul class="done-list">
            {groups
              .filter((group) => group.kind === kind)
              .map((group) => (
                <Guess group={group} />
              ))}
          </ul>
        </section>
      ))}
      <p class="way">
        <a href="/begin/session">What a usual session makes by these figures</a>
      </p>
      <p class="way">
        <a href={MEASURED}>What the work takes, as measured by your taps</a>
      </p>
      <p class="way">
        <a href="/yard">Your yard</a>
      </p>
    </>
  );
};
