import type { FC } from 'hono/jsx';
import { ODDS_SAID, oddsWords, USUAL_ODDS } from '../../shared/promise-odds.ts';
import { SPARE_RULES, type SpareRule, USUAL_SPARES } from '../../shared/spares.ts';
import type { FormState } from '../../src/usecases/plan/save-edit.ts';
import type { YardAboutModel } from '../../src/usecases/yard/edit-yard.ts';
import { enoughText } from '../first/how-sure-text.ts';
import { type FieldErrors, SelectField, TextField, TickField } from '../parts/field.tsx';
import { shownIn, tickedIn } from '../parts/form-state.tsx';
import { WrittenFields } from '../parts/written-fields.tsx';
import { EditPage } from './edit-page.tsx';
import { YARD } from './sections.ts';
import { daysFrom } from './yard-words.ts';

interface AboutProps {
  model: YardAboutModel;
  state: FormState;
}

interface FigureProps extends AboutProps {
  name: string;
  label: string;
  hint?: string;
  stored: string | number | null | undefined;
  list?: string;
}

const Figure: FC<FigureProps> = ({ model, state, name, stored, ...field }) => (
  <TextField
    {...field}
    name={name}
    width="short"
    value={shownIn(state, name, stored)}
    errors={state.errors as FieldErrors}
    guess={model.guesses.includes(name)}
  />
);

const Names: FC<AboutProps> = (props) => {
  const { model, state } = props;
  const { errors } = state;
  return (
    <>
      <TextField
        name="name"
        label="Name of the yard"
        value={shownIn(state, 'name', model.facts.name)}
        errors={errors}
      />
      <TextField
        name="timeZone"
        label="Time zone"
        hint="Its clock is the yard's clock, summer time and all."
        list="zones"
        value={shownIn(state, 'timeZone', model.facts.timeZone)}
        errors={errors}
      />
      <datalist id="zones">
        {model.zones.map((zone) => (
          <option value={zone} />
        ))}
      </datalist>
      <WrittenFields
        system={shownIn(state, 'system', model.system)}
        english={shownIn(state, 'english', model.english)}
        errors={errors}
      />
      <Figure
        {...props}
        name="currency"
        label="Money"
        hint="Three letters: EUR, GBP, USD."
        stored={model.currency}
        list="currencies"
      />
      <datalist id="currencies">
        {model.currencies.map((currency) => (
          <option value={currency} />
        ))}
      </datalist>
      <SelectField
        name="weekStart"
        label="The week starts on"
        options={daysFrom('MO')}
        value={shownIn(state, 'weekStart', model.weekStart)}
        errors={errors}
      />
    </>
  );
};

/** What the figure is for, and what is advised. */
const inHandHint = (advised: number): string => {
  const advice =
    advised === 1
      ? 'One is advised, two while more than three of your figures are still to be checked.'
      : 'Two are advised while more than three of your figures are still to be checked, then one.';
  return `While less is on record, the date to promise comes so many sessions after the earliest one. ${advice}`;
};

const SPARES_SAID: Readonly<Record<SpareRule, string>> = {
  never: 'Never',
  recorded: `Once ${enoughText()} are on record`,
  always: 'Always, by a guess of 1 reject in 20 to begin with',
};

const Promises: FC<AboutProps> = (props) => {
  const { model, state } = props;
  const {
    handoverDays,
    promiseOdds = USUAL_ODDS,
    sessionsInHand,
    deliveryDaysInHand,
    deliveredBy,
    horizonDays,
  } = model.facts;
  return (
    <fieldset class="form">
      <legend>Handing over and promising</legend>
      <TickField
        name="handoverDays"
        label="Days on which orders are handed over"
        hint="None ticked: any day."
        errors={state.errors}
        ticks={daysFrom(model.weekStart).map(({ value, text }) => ({
          ...{ value, text },
          ticked: tickedIn(state, `handoverDays:${value}`, handoverDays?.includes(value) ?? false),
        }))}
      />
      <SelectField
        name="promiseOdds"
        label="A date to promise is kept"
        hint={`Once ${enoughText()} are on record, the date to promise is the first that is kept so often by what went wrong so far.`}
        options={ODDS_SAID.map(({ share }) => ({ value: String(share), text: `${oddsWords(share)} times` }))}
        value={shownIn(state, 'promiseOdds', promiseOdds)}
        errors={state.errors}
      />
      <SelectField
        name="spares"
        label="One to spare, where several have to come out good"
        hint="One piece more is poured, behind all orders that have a date, where that makes it likelier by 1 in 10 or more that none has to be poured again. No date waits for it; what is not needed goes to stock and is used first."
        options={SPARE_RULES.map((rule) => ({ value: rule, text: SPARES_SAID[rule] }))}
        value={shownIn(state, 'spares', model.spares ?? USUAL_SPARES)}
        errors={state.errors}
      />
      <Figure
        {...props}
        name="sessionsInHand"
        label="Sessions in hand before a promise"
        hint={inHandHint(model.sessionsAdvised)}
        stored={sessionsInHand}
      />
      <Figure
        {...props}
        name="deliveryDaysInHand"
        label="Days in hand for deliveries"
        hint="What is delivered may come so many days late: it is ordered that much sooner, and dates to promise allow for it."
        stored={deliveryDaysInHand}
      />
      <TextField
        name="deliveredBy"
        label="Deliveries are there by"
        type="time"
        width="short"
        hint="What comes on a day is counted on from then. 00:00: from the beginning of the day."
        value={shownIn(state, 'deliveredBy', deliveredBy)}
        errors={state.errors as FieldErrors}
      />
      <Figure
        {...props}
        name="floatDays"
        label="Working days that goods are there before"
        hint="What is bought is to be in the yard so many working days before it is needed. No date waits for that."
        stored={model.floatDays}
      />
      <Figure
        {...props}
        name="fixedHours"
        label="Hours ahead that a session is fixed"
        hint="0: only once it begins."
        stored={model.fixedHours}
      />
      <Figure {...props} name="horizonDays" label="Days ahead that are planned" stored={horizonDays} />
    </fieldset>
  );
};

const Room: FC<AboutProps> = (props) => {
  const { mixers, rackSpaces, setUpMinutes, clearUpMinutes } = props.model.facts;
  return (
    <fieldset class="form">
      <legend>Room and tools</legend>
      <Figure {...props} name="mixers" label="Mixers" stored={mixers} />
      <Figure
        {...props}
        name="rackSpaces"
        label="Places on the rack"
        hint="Where pieces cure. Empty: no limit."
        stored={rackSpaces}
      />
      <Figure {...props} name="setUpMinutes" label="Minutes to set up a session" stored={setUpMinutes} />
      <Figure {...props} name="clearUpMinutes" label="Minutes to clear up after it" stored={clearUpMinutes} />
    </fieldset>
  );
};

/** What most yards never touch, in the only words a maker could answer. */
const Saving: FC<AboutProps> = (props) => (
  <details class="message" open={Boolean(props.state.errors.batchWorthDays ?? props.state.errors.bagWorthDays)}>
    <summary>More: waiting to save a mix</summary>
    <p class="hint">
      Pieces of several orders can share one mix if the first of them waits. No promise is broken for it.
    </p>
    <Figure
      {...props}
      name="batchWorthDays"
      label="Days an order may wait to save one mix"
      stored={props.model.facts.batchWorthDays}
    />
    <Figure
      {...props}
      name="bagWorthDays"
      label="Days an order may wait to save one bag"
      stored={props.model.facts.bagWorthDays}
    />
  </details>
);

export const ABOUT = `${YARD}/about`;

/** The yard as a whole. */
export const AboutPage: FC<AboutProps> = (props) => (
  <EditPage
    answer={props.model.facts.name || 'Your yard'}
    note="What holds for the yard as a whole."
    state={props.state}
    today={props.model.today}
    action={ABOUT}
    back={YARD}
  >
    <Names {...props} />
    <Promises {...props} />
    <Room {...props} />
    <Saving {...props} />
  </EditPage>
);
