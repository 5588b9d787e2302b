import type { FC } from 'hono/jsx';
import { fullDayWords } from '../../shared/day-words.ts';
import type { ComingFacts } from '../../src/usecases/buying/buying-facts.ts';
import type { RefusedForm } from '../../src/usecases/plan/save-edit.ts';
import { AmountField, unitHint } from '../parts/amount-field.tsx';
import { Button } from '../parts/button.tsx';
import { DayField } from '../parts/day-field.tsx';
import { dayText } from '../parts/day-text.ts';
import { TextField, Wrong } from '../parts/field.tsx';
import { unusedText } from '../parts/keeping-text.ts';
import { moneyField, moneyText } from '../parts/money-text.ts';
import { isMeasure } from '../parts/quantity-text.ts';
import { expectedText, goodsText, purposeText } from './buying-text.ts';

interface ComingLineProps {
  goods: ComingFacts;
  today: string;
  currency: string;
  refused: RefusedForm | null;
}

const boughtText = ({ boughtOn, price }: ComingFacts, today: string, currency: string): string =>
  [boughtOn && `bought ${dayText(boughtOn, today)}`, price !== null && moneyText(price, currency)]
    .filter(Boolean)
    .join(', ');

/** What stands in the field is a guess until somebody has read it off a bag. */
const bagDateHint = ({ keepsUntil }: ComingFacts): string =>
  keepsUntil === null
    ? 'Best before, as on the bag. May stay empty.'
    : 'A guess, by how long it keeps: write what is on the bag, best before or “packed 3 May”.';

const priceField = ({ price }: ComingFacts, currency: string): string =>
  price === null ? '' : moneyField(price, currency);

const Otherwise: FC<ComingLineProps> = ({ goods, currency, refused }) => {
  const { errors = {}, typed = {} } = refused ?? {};
  return (
    <details class="otherwise" open={refused !== null && refused.errors.on === undefined && !refused.effect}>
      <summary aria-label={`Change what came: ${goods.name}`}>Change</summary>
      <div class="field-row">
        <AmountField
          name="came"
          id={`came-${goods.id}`}
          label={`How much came${unitHint(goods.unit)}`}
          counts={!isMeasure(goods.unit)}
          hint="What is missing stays on its way."
          value={typed.came ?? goods.field}
          was={typed.cameWas ?? goods.was}
          errors={errors}
        />
        {goods.hasBags && (
          <DayField
            name="useBy"
            id={`useBy-${goods.id}`}
            label="Bag date"
            hint={bagDateHint(goods)}
            value={typed.useBy ?? (goods.keepsUntil === null ? '' : fullDayWords(goods.keepsUntil))}
            errors={errors}
          />
        )}
        <TextField
          name="price"
          id={`price-${goods.id}`}
          label={`Paid for it, ${currency}`}
          width="short"
          hint="For what came, where it is not as it was bought."
          value={typed.price ?? priceField(goods, currency)}
          errors={errors}
        />
        <input type="hidden" name="priceWas" value={priceField(goods, currency)} />
        {/* Sent once more unchanged, an amount that was asked about is meant. */}
        {errors.came !== undefined && <input type="hidden" name="sure" value={typed.came} />}
        <button
          type="submit"
          class="button plain"
          formaction="/buying/not-coming"
          data-hx-post="/buying/not-coming"
          data-hx-target="#page"
          data-hx-include="closest form"
          aria-label={`Not coming: ${goodsText(goods)}`}
        >
          Not coming
        </button>
      </div>
    </details>
  );
};

/** A form of its own, so that Enter in its field does not say that they arrived. */
const AnotherDay: FC<ComingLineProps> = ({ goods, today, refused }) => {
  const { errors = {}, typed = {} } = refused ?? {};
  return (
    <details class="otherwise another-day" open={errors.on !== undefined}>
      <summary aria-label={`Another day: ${goods.name}`}>Another day</summary>
      <form
        class="field-row"
        method="post"
        action="/buying/new-day"
        data-hx-post="/buying/new-day"
        data-hx-target="#page"
      >
        <input type="hidden" name="goods" value={String(goods.id)} />
        <input type="hidden" name="onWas" value={goods.on} />
        <DayField
          name="on"
          id={`on-${goods.id}`}
          label="Expected"
          min={today}
          value={typed.on ?? fullDayWords(goods.on)}
          errors={errors}
        />
        <Button label={`Expected then: ${goodsText(goods)}`}>Expected then</Button>
      </form>
    </details>
  );
};

/** Goods on their way, and the button that puts them into stock. */
export const ComingLine: FC<ComingLineProps> = ({ goods, today, currency, refused }) => (
  <li>
    <form class="buy" method="post" action="/buying/arrived" data-hx-post="/buying/arrived" data-hx-target="#page">
      <input type="hidden" name="goods" value={String(goods.id)} />
      <div class="buy-what">
        <p>
          <strong>{goodsText(goods)}</strong>
        </p>
        <p class="quiet">
          {[purposeText(goods.for, goods.unit), boughtText(goods, today, currency)].filter(Boolean).join('; ')}.
        </p>
        {goods.unused && <p class="goes-off">{unusedText(goods.unused, today)}</p>}
        <Wrong message={refused?.errors.goods} name="goods" />
      </div>
      <p class={goods.on < today ? 'buy-by late-goods' : 'buy-by'}>{expectedText(goods, today)}</p>
      <Button label={`Arrived: ${goodsText(goods)}`}>Arrived</Button>
      <Otherwise goods={goods} today={today} currency={currency} refused={refused} />
    </form>
    <AnotherDay goods={goods} today={today} currency={currency} refused={refused} />
  </li>
);
