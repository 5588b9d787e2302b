import type { FC } from 'hono/jsx';
import { countText } from '../../shared/plural.ts';
import type { PricedThing, PricesModel } from '../../src/usecases/money/show-prices.ts';
import type { RefusedForm } from '../../src/usecases/plan/save-edit.ts';
import { AmountField } from '../parts/amount-field.tsx';
import { Answer, Empty } from '../parts/answer.tsx';
import { Button, ButtonLink } from '../parts/button.tsx';
import { FormErrors } from '../parts/field.tsx';
import { moneyField, moneyText } from '../parts/money-text.ts';
import { type DoneNotice, Notice } from '../parts/notice.tsx';
import { CostTable } from './cost-table.tsx';
import { MissingFigures } from './missing-figures.tsx';
import { PRICES, PRICES_TABLE, percentText, SESSION_COSTS } from './money-text.ts';

interface PricesProps {
  model: PricesModel;
  notice: DoneNotice | null;
  refused: RefusedForm | null;
}

/** "Five kits, from €95.00 to €440.00." */
const pricesAnswer = ({ kits, currency }: PricesModel): string => {
  const prices = kits.flatMap(({ price }) => price ?? []);
  if (kits.length === 0) return 'No kit is there to be priced.';
  if (prices.length === 0) return `${countText(kits.length, 'kit')}, none with a price yet.`;
  const [least, most] = [Math.min(...prices), Math.max(...prices)].map((price) => moneyText(price, currency));
  const range = least === most ? `for ${least}` : `from ${least} to ${most}`;
  const without = kits.length - prices.length;
  return `${countText(kits.length, 'kit')} ${range}${without > 0 ? `, ${without} without a price` : ''}.`;
};

/** "35 % of it is left.", "It costs €12.00 more than that." */
const marginText = ({ price, margin, cost, isMore }: PricedThing, currency: string): string | null => {
  if (price === null || margin === null) return null;
  if (margin < 0) return `It costs ${moneyText(cost.total - price, currency)} more than that.`;
  return `${isMore ? 'Less than ' : ''}${percentText(margin)} of it is left.`;
};

const howText = ({ isTyped, price, byMargin }: PricedThing, currency: string): string => {
  if (price === null) return 'No price is typed, and no margin said.';
  if (!isTyped) return 'By the margin.';
  return byMargin === null || byMargin === price ? 'Typed.' : `Typed; by the margin ${moneyText(byMargin, currency)}.`;
};

const PriceForm: FC<{ thing: PricedThing; currency: string; refused: RefusedForm | null }> = (props) => {
  const { thing, currency, refused } = props;
  const own = refused?.form === thing.id ? refused : null;
  const stored = thing.isTyped && thing.price !== null ? moneyField(thing.price, currency) : '';
  return (
    <form class="price-form" method="post" action={`${PRICES}/${encodeURIComponent(thing.id)}/price`}>
      <AmountField
        name="price"
        id={`price-${thing.id}`}
        label={`Price (${currency})`}
        hint="Empty: by the margin."
        value={own?.typed.price ?? stored}
        errors={own?.errors ?? {}}
      />
      <Button>Save price</Button>
    </form>
  );
};

const Thing: FC<{ thing: PricedThing; currency: string; refused?: RefusedForm | null; isKit?: boolean }> = (props) => {
  const { thing, currency, refused = null, isKit = false } = props;
  const left = marginText(thing, currency);
  return (
    <li class="priced">
      <div class="priced-head">
        <h3>{thing.name}</h3>
        <strong class="number">{thing.price === null ? 'no price' : moneyText(thing.price, currency)}</strong>
      </div>
      <p class="quiet">
        {howText(thing, currency)} {left}
      </p>
      <details class="message">
        <summary>
          {thing.isMore ? 'Costs more than' : 'Costs'} {moneyText(thing.cost.total, currency)}
        </summary>
        <CostTable cost={thing.cost} isMore={thing.isMore} currency={currency} of={thing.name} />
      </details>
      {isKit && <PriceForm thing={thing} currency={currency} refused={refused} />}
    </li>
  );
};

/** What is asked for kits and pieces, beside what they cost. */
export const PricesPage: FC<PricesProps> = ({ model, notice, refused }) => (
  <>
    {notice && <Notice notice={notice} today={model.today} back={PRICES} />}
    <FormErrors errors={refused?.errors ?? {}} lead="Nothing was changed." />
    <Answer note="For your own eyes: what each thing costs stands beside what is asked for it.">
      {pricesAnswer(model)}
    </Answer>
    <MissingFigures missing={model.missing} />
    <div class="buttons">
      <ButtonLink href="/yard/costs">What work costs</ButtonLink>
      <ButtonLink href={SESSION_COSTS}>What sessions cost</ButtonLink>
      <ButtonLink href={PRICES_TABLE}>As a table (CSV)</ButtonLink>
      <ButtonLink href="/orders" kind="quiet">
        Orders
      </ButtonLink>
    </div>
    {model.kits.length === 0 && <Empty>Kits are made under Your yard.</Empty>}
    {model.kits.length > 0 && (
      <section>
        <h2>Kits</h2>
        <ul class="priced-list">
          {model.kits.map((kit) => (
            <Thing thing={kit} currency={model.currency} refused={refused} isKit />
          ))}
        </ul>
      </section>
    )}
    {model.pieces.length > 0 && (
      <section>
        <h2>Single pieces</h2>
        <ul class="priced-list">
          {model.pieces.map((piece) => (
            <Thing thing={piece} currency={model.currency} />
          ))}
        </ul>
      </section>
    )}
  </>
);
