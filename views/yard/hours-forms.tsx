import type { FC } from 'hono/jsx';
import { fullDayWords } from '../../shared/day-words.ts';
import type { Weekday } from '../../shared/time.ts';
import type { FormState } from '../../src/usecases/plan/save-edit.ts';
import type { DayHours, RepeatingHours } from '../../src/usecases/yard/show-yard-hours.ts';
import { DayField } from '../parts/day-field.tsx';
import { ChoiceField, described, Field, TextField, TickField } from '../parts/field.tsx';
import { shownIn, tickedIn } from '../parts/form-state.tsx';
import { EditPage } from './edit-page.tsx';
import { HOURS, HOURS_DAY, HOURS_OFF } from './hours-page.tsx';
import { datesText } from './hours-words.ts';
import { entryPath } from './sections.ts';
import { daysFrom } from './yard-words.ts';

interface FormProps {
  state: FormState;
  today: string;
}

type Hours = Pick<DayHours, 'start' | 'end' | 'crew' | 'may'>;

const MAY = [
  { value: 'all', text: 'Everything' },
  { value: 'strip', text: 'Only stripping and packing' },
];
const AS_IT_IS = { value: 'kept', text: 'As it is now' };

const HoursFields: FC<FormProps & { hours: Hours | null }> = ({ state, hours }) => (
  <>
    <div class="yard-figures">
      <TextField
        name="start"
        label="From"
        type="time"
        width="short"
        value={shownIn(state, 'start', hours?.start)}
        errors={state.errors}
      />
      <TextField
        name="end"
        label="To"
        type="time"
        width="short"
        value={shownIn(state, 'end', hours?.end === '24:00' ? '00:00' : hours?.end)}
        errors={state.errors}
      />
      <TextField
        name="crew"
        label="People"
        width="short"
        value={shownIn(state, 'crew', hours?.crew ?? 1)}
        errors={state.errors}
      />
    </div>
    <ChoiceField
      name="may"
      label="What may be done then"
      value={shownIn(state, 'may', hours?.may ?? 'all')}
      choices={hours?.may === 'kept' ? [...MAY, AS_IT_IS] : MAY}
      errors={state.errors}
    />
  </>
);

const EVERY = [
  { value: '1', text: 'Every week' },
  { value: '2', text: 'Every second week' },
];

/** What a rule comes to, while it is typed and once it is stored. */
export const RuleDates: FC<{ found: { dates: string[] } | { fault: string } | null; today: string }> = ({
  found,
  today,
}) => {
  if (found === null) return null;
  if ('fault' in found) return <span class="error">{found.fault}</span>;
  return <>{found.dates.length === 0 ? 'It gives no date to come.' : `It gives ${datesText(found.dates, today)}.`}</>;
};

interface RepeatingProps extends FormProps {
  hours: RepeatingHours | null;
  weekStart: Weekday;
  /** What the rule in the form comes to. */
  found: { dates: string[] } | { fault: string } | null;
}

const RuleField: FC<RepeatingProps> = ({ state, hours, found, today }) => {
  const stored = hours && !hours.rhythm ? hours.rule : '';
  const hint =
    'RFC 5545, repeating daily, weekly or monthly: FREQ=MONTHLY;BYDAY=1SA. It counts in place of the days above.';
  return (
    <details class="message" open={Boolean(shownIn(state, 'rule', stored))}>
      <summary>Another pattern (repeat rule)</summary>
      <Field name="rule" label="Rule" hint={hint} errors={state.errors} width="full">
        <input
          {...described('rule', state.errors, hint)}
          type="text"
          autocomplete="off"
          value={shownIn(state, 'rule', stored)}
          data-hx-get={`${HOURS}/dates`}
          data-hx-include="closest form"
          data-hx-trigger="change"
          data-hx-target="#rule-dates"
        />
      </Field>
      <p id="rule-dates" class="hint" aria-live="polite">
        {!state.errors.rule && <RuleDates found={found} today={today} />}
      </p>
    </details>
  );
};

const dayShown = (state: FormState, name: string, date: string | null | undefined): string =>
  shownIn(state, name, date ? fullDayWords(date) : '');

/** Hours that repeat. */
export const RepeatingForm: FC<RepeatingProps> = (props) => {
  const { state, today, hours, weekStart } = props;
  return (
    <EditPage
      answer={hours ? 'Change these hours.' : 'Add hours that repeat.'}
      state={state}
      today={today}
      action={entryPath(HOURS, hours?.id ?? 'new')}
      back={HOURS}
    >
      <TickField
        name="days"
        label="On"
        errors={state.errors}
        ticks={daysFrom(weekStart).map(({ value, text }) => ({
          ...{ value, text },
          ticked: tickedIn(state, `days:${value}`, hours?.rhythm?.days.includes(value) ?? false),
        }))}
      />
      <ChoiceField
        name="everyWeeks"
        label="How often"
        value={shownIn(state, 'everyWeeks', String(hours?.rhythm?.everyWeeks ?? 1))}
        choices={EVERY}
        errors={state.errors}
      />
      <HoursFields state={state} today={today} hours={hours} />
      <div class="field-row">
        <DayField
          name="from"
          label="First day"
          hint="Every second week is counted from its week."
          value={dayShown(state, 'from', hours?.from ?? today)}
          errors={state.errors}
        />
        <DayField
          name="until"
          label="Last day"
          hint="Empty: for good."
          value={dayShown(state, 'until', hours?.until)}
          errors={state.errors}
        />
      </div>
      <RuleField {...props} />
    </EditPage>
  );
};

/** Hours of one day. */
export const DayForm: FC<FormProps & { hours: DayHours | null }> = ({ state, today, hours }) => (
  <EditPage
    answer={hours ? 'Change the hours of this day.' : 'Add hours on a single day.'}
    state={state}
    today={today}
    action={entryPath(HOURS_DAY, hours?.id ?? 'new')}
    back={HOURS}
  >
    <DayField name="date" label="Day" min={today} value={dayShown(state, 'date', hours?.date)} errors={state.errors} />
    <HoursFields state={state} today={today} hours={hours} />
    <label class="choice">
      <input type="checkbox" name="instead" value="yes" checked={tickedIn(state, 'instead', hours?.instead ?? false)} />
      <span>Instead of the usual hours of that day</span>
    </label>
  </EditPage>
);

/** A day off, or a holiday. */
export const OffForm: FC<FormProps> = ({ state, today }) => (
  <EditPage
    answer="Add days off."
    note="None of the usual hours are worked then."
    state={state}
    today={today}
    action={entryPath(HOURS_OFF, 'new')}
    back={HOURS}
  >
    <div class="field-row">
      <DayField
        name="from"
        label="First day off"
        min={today}
        value={dayShown(state, 'from', null)}
        errors={state.errors}
      />
      <DayField
        name="to"
        label="Last day off"
        hint="Empty: that one day."
        min={today}
        value={dayShown(state, 'to', null)}
        errors={state.errors}
      />
    </div>
  </EditPage>
);
