import type { FC } from 'hono/jsx';
import { SLIPS } from '../../shared/order.ts';
import type { ReadyFacts } from '../../src/usecases/first/ask-when.ts';
import type { OrderFormModel } from '../../src/usecases/orders/show-order-form.ts';
import type { Effect } from '../../src/usecases/plan/save-edit.ts';
import { ReadyLine } from '../first/ready-answer.tsx';
import { AmountField } from '../parts/amount-field.tsx';
import { Answer, Empty } from '../parts/answer.tsx';
import { Button, ButtonLink } from '../parts/button.tsx';
import { DayField } from '../parts/day-field.tsx';
import {
  ChoiceField,
  described,
  Field,
  type FieldErrors,
  FormErrors,
  SelectField,
  TextField,
} from '../parts/field.tsx';
import { whatOptions } from '../parts/what-options.ts';
import { SLIP_WORDS } from '../words/order-text.ts';
import { OrderAsked } from './order-asked.tsx';

/** The form as it stands: what it offers, what is typed in it, and what comes of that. */
export interface OrderFormShown extends Pick<OrderFormModel, 'today' | 'offers' | 'customers'> {
  /** The order being changed; null for a new one. */
  id: string | null;
  /** By field name: `customer`, `what0`, `quantity0` … exactly as typed. */
  typed: Readonly<Record<string, string>>;
  /** Marks this form among all that are drawn, so that it is taken once; null where an order is changed. */
  once: string | null;
  /** Rows of what and how many. */
  rows: number;
  errors: FieldErrors;
  /** What of it is asked about before it is saved. */
  effect: Effect | null;
  /** When what is typed so far could be ready; null while that can't be said. */
  ready: ReadyFacts | null;
}

const FORM = 'order';

const NOTHING = { value: '', text: 'Nothing more' };

const Line: FC<{ row: number; model: OrderFormShown }> = ({ row, model: { offers, typed, errors } }) => (
  <div class="field-row order-line">
    <SelectField
      name={`what${row}`}
      label={row === 0 ? 'What' : 'And'}
      value={typed[`what${row}`] ?? ''}
      options={[...(row === 0 ? [{ value: '', text: 'Choose' }] : [NOTHING]), ...whatOptions(offers)]}
      errors={errors}
    />
    <AmountField
      name={`quantity${row}`}
      label="How many"
      counts
      value={typed[`quantity${row}`] ?? ''}
      was={typed[`quantity${row}Was`]}
      errors={errors}
    />
  </div>
);

const Customer: FC<{ model: OrderFormShown }> = ({ model: { typed, errors, customers } }) => (
  <>
    <TextField
      name="customer"
      label="Customer"
      value={typed.customer}
      errors={errors}
      list="customers"
      hint="May stay empty for a walk-in."
    />
    <datalist id="customers">
      {customers.map((name) => (
        <option value={name} />
      ))}
    </datalist>
    <TextField name="phone" label="Phone" type="tel" value={typed.phone} errors={errors} />
  </>
);

interface PromisedFieldProps extends Pick<OrderFormShown, 'typed' | 'today'> {
  errors?: FieldErrors;
  /** Sent beside the line that says when it could be ready, to take the field's place. */
  beside?: boolean;
}

/** The day that is told. What the page filled in goes with it: while the field still says that, it follows the line above it. */
export const PromisedField: FC<PromisedFieldProps> = ({ typed, errors, today, beside = false }) => (
  <div id="promised" class="says-when" {...(beside ? { 'data-hx-swap-oob': 'true' } : {})}>
    {typed.filledIn && <input type="hidden" name="filledIn" value={typed.filledIn} />}
    <DayField
      name="promisedOn"
      label="Promised"
      hint="The day they are told."
      min={today}
      value={typed.promisedOn}
      {...(errors ? { errors } : {})}
    />
  </div>
);

const Dates: FC<{ model: OrderFormShown }> = ({ model: { id, typed, errors, today } }) => (
  <>
    <div class="field-row">
      <DayField
        name="wantedOn"
        label="Wanted"
        hint="The day asked for, if any. Write it as you like: 8 May, next Saturday."
        min={today}
        value={typed.wantedOn}
        errors={errors}
      />
      <div class="says-when" {...(id === null ? SAYS_WHEN : {})}>
        <DayField
          name="notBefore"
          label="Not before"
          hint="Nothing is poured for it earlier. Mostly empty."
          min={today}
          value={typed.notBefore}
          errors={errors}
        />
      </div>
    </div>
    <div class="field-row">
      <PromisedField typed={typed} errors={errors} today={today} />
      <DayField
        name="heldUntil"
        label="Held until"
        hint="Empty once it is sure."
        min={today}
        value={typed.heldUntil}
        errors={errors}
      />
    </div>
    <p class="hint">
      A held date keeps its place in the plan until the end of that day, and then lapses with a notice.
    </p>
  </>
);

/** What is typed here says anew when it could be ready. */
const SAYS_WHEN = {
  'data-hx-post': '/orders/ready',
  'data-hx-trigger': 'input delay:120ms, change delay:120ms',
  'data-hx-target': '#ready-so-far',
  'data-hx-include': 'closest form',
  'data-hx-sync': 'this:replace',
} as const;

/** When what stands in the form could be ready. Asked anew while it is filled in. */
export const ReadySoFar: FC<{ ready: ReadyFacts | null; today: string }> = ({ ready, today }) =>
  ready ? (
    <>
      <ReadyLine facts={ready} today={today} />
      {ready.isLooking && <div {...SAYS_WHEN} data-hx-trigger="every 2s" data-hx-vals='{"still": "yes"}' />}
    </>
  ) : (
    <p class="ready-line">Choose what is ordered to see when it could be ready.</p>
  );

/** Before the yard makes anything there is nothing to fill in. */
const NothingToOrder: FC = () => (
  <>
    <Answer>Nothing can be ordered yet.</Answer>
    <Empty>
      An order is for kits, single panels or parts. <a href="/begin/four">Give four answers</a>, or say at{' '}
      <a href="/yard">Your yard</a> what you cast.
    </Empty>
  </>
);

export const OrderFormPage: FC<{ model: OrderFormShown }> = ({ model }) => {
  const { id, typed, errors, rows, today } = model;
  if (model.offers.length === 0) return <NothingToOrder />;
  const action = id === null ? '/orders' : `/orders/${encodeURIComponent(id)}/edit`;
  return (
    <>
      <FormErrors errors={errors} />
      {model.effect && (
        <OrderAsked
          effect={model.effect}
          today={today}
          form={FORM}
          anyway={id === null ? 'Take order anyway' : 'Save anyway'}
        />
      )}
      <Answer>{id === null ? 'Take an order.' : `Change order ${id}.`}</Answer>
      <form class="form" id={FORM} method="post" action={action}>
        {/* No field of type hidden: those may not say autocomplete, and Firefox would bring an old mark back on a reload. */}
        {model.once && (
          <input type="text" name="once" value={model.once} aria-label="Mark" autocomplete="off" readonly hidden />
        )}
        {typed.version && <input type="hidden" name="version" value={typed.version} />}
        {/* The first button of a form is what Enter presses. */}
        <button type="submit" class="unseen" tabindex={-1}>
          {id === null ? 'Take order' : 'Save'}
        </button>
        <fieldset class="field lines">
          <legend>What is ordered</legend>
          <div class="lines-live" {...SAYS_WHEN}>
            {Array.from({ length: rows }, (_, row) => (
              <Line row={row} model={model} />
            ))}
          </div>
          <div class="buttons">
            <Button name="more" value={String(rows + 2)}>
              More lines
            </Button>
          </div>
        </fieldset>
        {id === null && (
          <div id="ready-so-far" aria-live="polite">
            <ReadySoFar ready={model.ready} today={today} />
          </div>
        )}
        <Customer model={model} />
        <Dates model={model} />
        <ChoiceField
          name="slip"
          label="Could it be later?"
          value={typed.slip ?? 'rather not'}
          choices={SLIPS.map((slip) => ({ value: slip, text: SLIP_WORDS[slip] }))}
          errors={errors}
        />
        <TextField
          name="address"
          label="Goes to"
          hint="The address, if you bring it: it stands on the loading list."
          value={typed.address}
          errors={errors}
        />
        <Field name="note" label="Note" errors={errors} width="full">
          <textarea {...described('note', errors)} rows={3}>
            {typed.note ?? ''}
          </textarea>
        </Field>
        <div class="buttons">
          <Button kind="main">{id === null ? 'Take order' : 'Save'}</Button>
          <ButtonLink href={id === null ? '/orders' : `/orders/${encodeURIComponent(id)}`} kind="quiet">
            Cancel
          </ButtonLink>
        </div>
      </form>
    </>
  );
};
