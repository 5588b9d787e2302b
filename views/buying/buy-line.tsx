import type { FC } from 'hono/jsx';
import { fullDayWords } from '../../shared/day-words.ts';
import type { BuyLineFacts } from '../../src/usecases/buying/buying-facts.ts';
import type { RefusedForm } from '../../src/usecases/plan/save-edit.ts';
import { AmountField, unitHint } from '../parts/amount-field.tsx';
import { Button } from '../parts/button.tsx';
import { DayField } from '../parts/day-field.tsx';
import { dayText } from '../parts/day-text.ts';
import { Wrong } from '../parts/field.tsx';
import { unusedText } from '../parts/keeping-text.ts';
import { moneyField, moneyText } from '../parts/money-text.ts';
import { amountText, isMeasure } from '../parts/quantity-text.ts';
import { goodsText, purposeText } from './buying-text.ts';
import { IfLate } from './if-late.tsx';
import { closedText, lineWarning } from './trip-text.ts';

interface BuyLineProps {
  line: BuyLineFacts;
  today: string;
  currency: string;
  refused: RefusedForm | null;
}

/** Fields of a purchase; they are filled in, so that one tap is enough when all went as the plan has it. */
const Otherwise: FC<BuyLineProps> = ({ line, today, currency, refused }) => {
  const { errors = {}, typed = {} } = refused ?? {};
  const id = (name: string) => `${name}-${line.key}`;
  return (
    <details class="otherwise" open={refused !== null}>
      <summary aria-label={`Change number, day or price: ${line.name}`}>Change</summary>
      <div class="field-row">
        <AmountField
          name="quantity"
          id={id('quantity')}
          label={`How much${unitHint(line.unit)}`}
          counts={!isMeasure(line.unit)}
          value={typed.quantity ?? line.field}
          was={typed.quantityWas ?? line.was}
          errors={errors}
        />
        <DayField
          name="on"
          id={id('on')}
          label="Expected"
          min={today}
          value={typed.on ?? fullDayWords(line.on)}
          errors={errors}
        />
        <AmountField
          name="price"
          id={id('price')}
          label={`Price of it all (${currency})`}
          counts
          value={typed.price ?? (line.price === null ? '' : moneyField(line.price, currency))}
          errors={errors}
        />
      </div>
      {!line.packIsOne && <p class="hint">Sold in packs of {amountText(line.pack, line.unit)}.</p>}
    </details>
  );
};

/** A form of its own: it says that the shop has none, until when, and all is planned without it. */
const NotToBeHad: FC<BuyLineProps> = ({ line, today, refused }) => {
  const { errors = {}, typed = {} } = refused ?? {};
  return (
    <details class="otherwise another-day" open={errors.on !== undefined}>
      <summary aria-label={`Not to be had: ${line.name}`}>Not to be had</summary>
      <form
        class="field-row"
        method="post"
        action="/buying/not-to-be-had"
        data-hx-post="/buying/not-to-be-had"
        data-hx-target="#page"
      >
        <input type="hidden" name="material" value={line.material} />
        <input type="hidden" name="line" value={line.key} />
        <DayField name="on" id={`none-${line.key}`} label="Before" min={today} value={typed.on ?? ''} errors={errors} />
        <Button label={`Plan without it: ${line.name}`}>Plan without it</Button>
      </form>
    </details>
  );
};

/** One thing to buy: what, for whom, by when, for how much, and the button that says it was done. */
export const BuyLine: FC<BuyLineProps> = ({ line, today, currency, refused: sent }) => {
  const isNone = sent?.form === `none-${line.key}`;
  const refused = isNone ? null : sent;
  return (
    <li>
      <form class="buy" method="post" action="/buying/bought" data-hx-post="/buying/bought" data-hx-target="#page">
        <input type="hidden" name="material" value={line.material} />
        <input type="hidden" name="line" value={line.key} />
        <div class="buy-what">
          <p>
            <strong>{goodsText(line)}</strong>
          </p>
          <p class="quiet">
            {purposeText(line.for, line.unit, line.beside)}.{closedText(line, today)}
          </p>
          {line.isAskedIfLate && (
            <IfLate slips={line.ifLate} material={line.material} orderBy={line.orderBy} today={today} />
          )}
          {lineWarning(line, today) && <p class="goes-off">{lineWarning(line, today)}</p>}
          {line.unused && (
            <p class="goes-off">
              {unusedText(line.unused, today)}
              {!line.packIsOne && ' Buy fewer if you can.'}
            </p>
          )}
          <Wrong message={refused?.errors.material} name="material" />
        </div>
        <p class="buy-by">
          {line.orderBy === today ? 'Order today' : `Order by ${dayText(line.orderBy, today)}`}
          {line.hasNothingInHand && <span class="quiet">: no day in hand</span>}
        </p>
        <p class="number">
          {line.price === null ? <span class="quiet">no price</span> : moneyText(line.price, currency)}
        </p>
        <Button label={`Bought: ${goodsText(line)}`}>Bought</Button>
        <Otherwise line={line} today={today} currency={currency} refused={refused} />
      </form>
      <NotToBeHad line={line} today={today} currency={currency} refused={isNone ? sent : null} />
    </li>
  );
};
