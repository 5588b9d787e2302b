import type { FC } from 'hono/jsx';
import { Button } from '../parts/button.tsx';
import { dayText } from '../parts/day-text.ts';
import { TextField } from '../parts/field.tsx';
import type { BuyLineFacts, RefusedForm } from './buying-facts.ts';
import { amountText, goodsText, purposeText } from './buying-text.ts';
import { moneyText } from './money-text.ts';

interface BuyLineProps {
  line: BuyLineFacts;
  today: string;
  refused: RefusedForm | null;
}

/** Fields of a purchase; they are filled in, so that one tap is enough when all went as the plan has it. */
const Otherwise: FC<BuyLineProps> = ({ line, today, refused }) => {
  const { errors = {}, typed = {} } = refused ?? {};
  const id = (name: string) => `${name}-${line.key}`;
  return (
    <details class="otherwise" open={refused !== null}>
      <summary aria-label={`Change number, day or price: ${line.name}`}>Change</summary>
      <div class="field-row">
        <TextField
          name="quantity"
          id={id('quantity')}
          label={`How much${line.unit && line.unit !== 'each' ? ` (${line.unit})` : ''}`}
          type="number"
          step="any"
          width="short"
          value={typed.quantity ?? line.quantity}
          errors={errors}
        />
        <TextField
          name="on"
          id={id('on')}
          label="Expected"
          type="date"
          width="short"
          min={today}
          value={typed.on ?? line.on}
          errors={errors}
        />
        <TextField
          name="price"
          id={id('price')}
          label="Price of it all"
          type="number"
          step="any"
          width="short"
          value={typed.price ?? (line.price === null ? '' : line.price.toFixed(2))}
          errors={errors}
        />
      </div>
      {line.pack !== 1 && <p class="hint">Sold in packs of {amountText(line.pack, line.unit)}.</p>}
    </details>
  );
};

/** One thing to buy: what, for whom, by when, for how much, and the button that says it was done. */
export const BuyLine: FC<BuyLineProps> = ({ line, today, refused }) => (
  <li>
    <form class="buy" method="post" action="/buying/bought" hx-post="/buying/bought" hx-target="#page">
      <input type="hidden" name="material" value={line.material} />
      <input type="hidden" name="line" value={line.key} />
      <div class="buy-what">
        <p>
          <strong>{goodsText(line)}</strong>
        </p>
        <p class="quiet">{purposeText(line.for, line.unit)}.</p>
        {refused?.errors.material && <p class="error">{refused.errors.material}</p>}
      </div>
      <p class="buy-by">{line.orderBy === today ? 'Order today' : `Order by ${dayText(line.orderBy, today)}`}</p>
      <p class="number">{line.price === null ? <span class="quiet">no price</span> : moneyText(line.price)}</p>
      <Button label={`Bought: ${goodsText(line)}`}>Bought</Button>
      <Otherwise line={line} today={today} refused={refused} />
    </form>
  </li>
);
