import type { FC } from 'hono/jsx';
import { Button, ButtonLink } from '../parts/button.tsx';
import { DayField } from '../parts/day-field.tsx';
import { SelectField, TextField } from '../parts/field.tsx';
import { whatOptions } from '../parts/what-options.ts';
import { type AskedModel, MOST_ROWS, rowField } from './asked.ts';

/** How many of what; every row but the first may be left empty. */
const QuestionRow: FC<{ asked: AskedModel; row: number }> = ({ asked: { rows, offers, errors }, row }) => {
  const [number, what] = [rowField('number', row), rowField('what', row)];
  const typed = rows[row];
  const nothing = row === 0 ? [] : [{ value: '', text: 'another …', group: '' }];
  return (
    <div class={row === 0 ? 'question-row' : 'question-row more'}>
      {row > 0 && <span aria-hidden="true">and</span>}
      <TextField
        name={number}
        label={row === 0 ? 'How many' : `How many, line ${row + 1}`}
        type="number"
        min={1}
        width="short"
        value={typed?.number ?? '1'}
        errors={errors}
      />
      <SelectField
        name={what}
        label={row === 0 ? 'Of what' : `Of what, line ${row + 1}`}
        value={typed?.what ?? ''}
        options={[...nothing, ...whatOptions(offers)]}
        errors={errors}
      />
    </div>
  );
};

/** One sentence to fill in. The words between its fields are for the eye: each field has a name of its own. */
export const Question: FC<{ asked: AskedModel; today: string }> = ({ asked, today }) => (
  <form
    id="question"
    class="question"
    data-address
    method="get"
    action="/"
    data-hx-get="/"
    data-hx-trigger="input delay:60ms"
    data-hx-target="#ready"
    data-hx-sync="closest .asking:replace"
    aria-label="When could it be ready?"
  >
    <span class="question-words" aria-hidden="true">
      When could
    </span>
    {[...asked.rows, null].slice(0, MOST_ROWS).map((_, row) => (
      <QuestionRow asked={asked} row={row} />
    ))}
    <span class="question-words" aria-hidden="true">
      be ready? Wanted by
    </span>
    <DayField name="wantedOn" label="Wanted by" min={today} value={asked.wantedOn} errors={asked.errors} />
    <div class="buttons">
      <Button>Ask</Button>
      <ButtonLink href="/kits/by-size" kind="quiet">
        Kit by size
      </ButtonLink>
    </div>
  </form>
);
