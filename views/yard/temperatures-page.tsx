import type { FC } from 'hono/jsx';
import { fullDayWords } from '../../shared/day-words.ts';
import type { FormState } from '../../src/usecases/plan/save-edit.ts';
import type { TemperatureLine, TemperaturesModel } from '../../src/usecases/yard/show-temperatures.ts';
import { Button, ButtonLink } from '../parts/button.tsx';
import { DayField } from '../parts/day-field.tsx';
import { TextField } from '../parts/field.tsx';
import { shownIn } from '../parts/form-state.tsx';
import type { DoneNotice } from '../parts/notice.tsx';
import { EditPage } from './edit-page.tsx';
import { MonthBars } from './month-bars.tsx';
import { entryPath, removePath, YARD } from './sections.ts';
import { SentenceList } from './sentence-list.tsx';
import { endsText, lineText, MONTH_NAMES, temperaturesAnswer } from './temperature-words.ts';

export const TEMPERATURES = `${YARD}/temperatures`;

const SEASONS = [
  { name: 'coldest', label: 'Coldest month' },
  { name: 'warmest', label: 'Warmest month' },
] as const;

interface TemperaturesProps {
  model: TemperaturesModel;
  state: FormState;
}

const Lines: FC<{ model: TemperaturesModel }> = ({ model: { lines, today } }) => (
  <SentenceList
    title="Days that are not like their month"
    empty="A cold week, say: add it with its days, and the plan waits longer before it strips."
    rows={lines.map((line) => ({
      text: lineText(line, today),
      edit: entryPath(TEMPERATURES, line.id),
      remove: removePath(TEMPERATURES, line.id),
    }))}
  >
    <ButtonLink href={entryPath(TEMPERATURES, 'new')}>Add days</ButtonLink>
    <ButtonLink href={YARD} kind="quiet">
      Your yard
    </ButtonLink>
  </SentenceList>
);

interface TemperaturesPageProps extends TemperaturesProps {
  notice: DoneNotice | null;
  /** The coldest and the warmest month, where the months were filled in by them. */
  two?: Readonly<Record<string, string>> | null;
}

/** Two figures in the place of twelve: they fill in the months, which are saved by themselves. */
const ByTwo: FC<Required<Pick<TemperaturesPageProps, 'model' | 'state' | 'two'>>> = ({ model, state, two }) => (
  <details class="message" open={two !== null || model.months.every(({ celsius }) => celsius === null)}>
    <summary>Only the coldest and the warmest month?</summary>
    <form method="get" action={TEMPERATURES} class="field-row">
      {SEASONS.map(({ name, label }) => (
        <TextField
          {...{ name, label }}
          width="short"
          value={two?.[name] ?? model.seasons[name]}
          errors={state.errors}
          guess={two === null}
        />
      ))}
      <Button>Fill in the months</Button>
    </form>
    <p class="hint">
      {two !== null && state.typed !== null
        ? 'The months below are filled in between the two. Nothing has been saved yet.'
        : 'The months between them follow. Nothing is saved by it.'}
    </p>
  </details>
);

/** What each month is like where the pieces set, day and night together. */
export const TemperaturesPage: FC<TemperaturesPageProps> = ({ model, state, notice, two = null }) => (
  <EditPage
    answer={temperaturesAnswer(model)}
    note="Where pieces set, day and night together. For planning only: on the day, the thermometer and the bag's data sheet decide."
    state={state}
    today={model.today}
    action={TEMPERATURES}
    back={YARD}
    notice={notice}
    before={<ByTwo {...{ model, state, two }} />}
    after={<Lines model={model} />}
  >
    {model.endsBefore && <p class="quiet">{endsText(model.endsBefore)}</p>}
    <MonthBars months={model.months} />
    <div class="months">
      {model.months.map(({ shown, guess }, month) => {
        const name = `month-${month + 1}`;
        return (
          <TextField
            name={name}
            label={MONTH_NAMES[month] ?? ''}
            width="short"
            value={shownIn(state, name, shown)}
            errors={state.errors}
            guess={guess}
          />
        );
      })}
    </div>
    <p class="hint">
      A number alone is {model.system === 'US' ? 'Fahrenheit' : 'Celsius'}; 12 C and 54 F are understood either way.
    </p>
  </EditPage>
);

interface LineProps extends TemperaturesProps {
  line: TemperatureLine | null;
}

/** A stretch of days with a temperature of its own. */
export const LineForm: FC<LineProps> = ({ model, state, line }) => (
  <EditPage
    answer={line ? 'Change these days.' : 'Add days that are not like their month.'}
    state={state}
    today={model.today}
    action={entryPath(TEMPERATURES, line?.id ?? 'new')}
    back={TEMPERATURES}
  >
    <TextField
      name="celsius"
      label="Temperature"
      hint={`Such as ${model.system === 'US' ? '43 F' : '6 °C'}: the mean of day and night.`}
      width="short"
      value={shownIn(state, 'celsius', line?.shown)}
      errors={state.errors}
    />
    <div class="field-row">
      <DayField
        name="from"
        label="First day"
        value={shownIn(state, 'from', fullDayWords(line?.from ?? model.today))}
        errors={state.errors}
      />
      {!line && (
        <DayField
          name="to"
          label="Last day"
          hint="Empty: until the next month, or what is given next."
          value={shownIn(state, 'to', fullDayWords(model.inAWeek))}
          errors={state.errors}
        />
      )}
    </div>
  </EditPage>
);
