import type { FC } from 'hono/jsx';
import type { SuppliersModel, YardSupplier } from '../../src/usecases/yard/show-suppliers.ts';
import { ChoiceField, TickField } from '../parts/field.tsx';
import { shownIn, tickedIn } from '../parts/form-state.tsx';
import { EditPage } from './edit-page.tsx';
import { EntryFigure, type EntryFormProps } from './entry-figure.tsx';
import { entryPath } from './sections.ts';
import { SUPPLIERS } from './suppliers-page.tsx';
import { daysFrom } from './yard-words.ts';

type SupplierFormProps = EntryFormProps<SuppliersModel, YardSupplier>;

const HOW = [
  { value: 'fetched', text: 'I fetch them there' },
  { value: 'brought', text: 'They are brought' },
  { value: 'unsaid', text: 'Fetched what can be had on the day, brought what cannot' },
];

interface DaysProps extends SupplierFormProps {
  name: 'opens' | 'delivers';
  label: string;
  hint: string;
  days: readonly string[] | null;
}

const Days: FC<DaysProps> = ({ model, state, name, label, hint, days }) => (
  <TickField
    {...{ name, label, hint }}
    errors={state.errors}
    ticks={daysFrom(model.weekStart).map(({ value, text }) => ({
      ...{ value, text },
      ticked: tickedIn(state, `${name}:${value}`, days?.length !== 7 && (days?.includes(value) ?? false)),
    }))}
  />
);

const Rules: FC<SupplierFormProps> = (props) => {
  const { state, entry } = props;
  const typed = (name: string) => shownIn(state, name, entry?.texts[name]);
  return (
    <details class="message" open={Boolean(typed('opensRule') || typed('deliversRule'))}>
      <summary>Another pattern (repeat rule)</summary>
      <div class="form">
        <EntryFigure
          {...props}
          name="opensRule"
          label="Open"
          width="line"
          hint="RFC 5545: FREQ=MONTHLY;BYDAY=1SA. It counts in place of the days above."
        />
        <EntryFigure {...props} name="deliversRule" label="Brings things" width="line" />
      </div>
    </details>
  );
};

const When: FC<SupplierFormProps> = (props) => (
  <fieldset class="form">
    <legend>When it is there</legend>
    <Days {...props} name="opens" label="Open on" hint="None ticked: every day." days={props.entry?.openDays ?? null} />
    <Days
      {...props}
      name="delivers"
      label="Brings things on"
      hint="None ticked: every day on which it is open."
      days={props.entry?.deliveryDays ?? null}
    />
    <EntryFigure
      {...props}
      name="closed"
      label="Closed as well on"
      width="line"
      hint="Single days and stretches: 24 Dec to 1 Jan; 3 May."
    />
    <EntryFigure
      {...props}
      name="leadDays"
      label="Days to come"
      hint="Another number is taken over by all of its materials that take as long as it did."
    />
    <Rules {...props} />
  </fieldset>
);

const Asks: FC<SupplierFormProps> = (props) => {
  const { currency, system } = props.model;
  return (
    <fieldset class="form">
      <legend>What it asks for</legend>
      <EntryFigure {...props} name="minimumOrder" label={`Least order (${currency})`} hint="Empty: none." />
      <EntryFigure
        {...props}
        name="deliveryPrice"
        label={`A delivery or a trip costs (${currency})`}
        hint="Empty: nothing."
      />
      <EntryFigure
        {...props}
        name="carriesKg"
        label={`Carried at once (${system === 'metric' ? 'kg' : 'lb'})`}
        hint="What the car takes, or the lorry. Empty: no limit. It counts what is said to weigh something."
      />
      <EntryFigure
        {...props}
        name="aheadDays"
        label="Bought at most so many days ahead"
        hint="Things that are needed later than that wait for another trip."
      />
    </fieldset>
  );
};

/** One supplier: when it is there, and what it asks for. */
export const SupplierForm: FC<SupplierFormProps> = (props) => {
  const { entry, state, model } = props;
  return (
    <EditPage
      answer={entry ? entry.name : 'Add a supplier.'}
      {...(entry ? {} : { save: 'Add it' })}
      state={state}
      today={model.today}
      action={entryPath(SUPPLIERS, entry?.id ?? 'new')}
      back={SUPPLIERS}
    >
      <EntryFigure {...props} name="name" label="Name" width="line" />
      <ChoiceField
        name="fetched"
        label="How things get here"
        value={shownIn(state, 'fetched', entry?.texts.fetched ?? 'unsaid')}
        choices={HOW}
        errors={state.errors}
      />
      <When {...props} />
      <Asks {...props} />
    </EditPage>
  );
};
