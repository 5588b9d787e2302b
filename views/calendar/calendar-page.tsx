import type { FC } from 'hono/jsx';
import { countText } from '../../shared/plural.ts';
import type { CalendarAddressesModel } from '../../src/usecases/calendar/calendar-addresses.ts';
import { Answer } from '../parts/answer.tsx';
import { Button, ButtonLink } from '../parts/button.tsx';
import { dayText } from '../parts/day-text.ts';
import { described, Field, type FieldErrors, FormErrors } from '../parts/field.tsx';
import { NoPhoneReaches } from '../parts/no-phone-reaches.tsx';
import { QrCode } from '../parts/qr-code.tsx';
import { YARD } from '../yard/sections.ts';

export const CALENDAR = '/yard/calendar';

export interface CalendarPageProps {
  model: CalendarAddressesModel;
  /** The address that was made just now: it is shown this once. */
  made: string | null;
  typed: string;
  errors: FieldErrors;
}

const Made: FC<{ address: string }> = ({ address }) => (
  <section class="notice" role="status" aria-label="The new address">
    <p>
      <strong>This is the address. It is shown only now.</strong> In a calendar program choose to subscribe to a
      calendar by its address, and paste it there; or point a phone's camera at the square.
    </p>
    <p>
      <label for="calendar-address" class="hint">
        Address
      </label>
      <textarea id="calendar-address" rows={3} readonly>
        {address}
      </textarea>
    </p>
    <p>
      For a reader of feeds it ends in <code>.json</code> instead of <code>.ics</code>: there is each date given that
      moved, and why.
    </p>
    <NoPhoneReaches address={address} what="it" />
    <div class="buttons">
      <button type="button" class="button plain" data-copy="calendar-address" hidden>
        Copy address
      </button>
    </div>
    <QrCode text={address} label="The address of the calendar as a square to point a camera at" />
  </section>
);

const Readers: FC<{ model: CalendarAddressesModel }> = ({ model: { addresses, today } }) =>
  addresses.length === 0 ? null : (
    <section>
      <h2>Who can read it</h2>
      <ul class="calendar-readers">
        {addresses.map(({ id, name, madeOn }) => (
          <li>
            <span>
              <strong>{name}</strong>, since {dayText(madeOn, today)}
            </span>
            <form method="post" action={`${CALENDAR}/withdraw`}>
              <input type="hidden" name="id" value={String(id)} />
              <Button label={`Withdraw the address of ${name}`}>Withdraw</Button>
            </form>
          </li>
        ))}
      </ul>
      <p class="hint">Where an address is withdrawn, nothing is found there from then on. That cannot be undone.</p>
    </section>
  );

const MakeOne: FC<Pick<CalendarPageProps, 'typed' | 'errors'>> = ({ typed, errors }) => (
  <section>
    <h2>Make an address</h2>
    <FormErrors errors={errors} />
    <form class="form" method="post" action={CALENDAR}>
      <Field name="name" label="Who or what will read it" hint="My phone, or a helper's name." errors={errors}>
        <input
          {...described('name', errors, 'My phone, or a helper’s name.')}
          type="text"
          value={typed}
          autocomplete="off"
        />
      </Field>
      <div class="buttons">
        <Button kind="main">Make an address</Button>
        <ButtonLink href={YARD}>Your yard</ButtonLink>
      </div>
    </form>
  </section>
);

const readersText = (count: number): string =>
  count === 0
    ? 'Nobody reads your calendar yet.'
    : `Your calendar can be read at ${countText(count, 'address', 'addresses')}.`;

/** Secret addresses at which the calendar of the yard is read by other programs. */
export const CalendarPage: FC<CalendarPageProps> = ({ model, made, typed, errors }) => (
  <>
    <Answer note="Sessions with what is cast in them, dates given to customers, and last days to order, in the calendar that you use anyway. It follows the plan by itself.">
      {readersText(model.addresses.length)}
    </Answer>
    {made && <Made address={made} />}
    <p class="caution">
      Whoever has such an address reads your customers' names and their dates. Give each reader one of their own, so
      that you can withdraw it alone.
    </p>
    <Readers model={model} />
    <MakeOne typed={typed} errors={errors} />
  </>
);
