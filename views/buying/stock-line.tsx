import type { FC } from 'hono/jsx';
import type { StockFacts } from '../../src/usecases/buying/buying-facts.ts';
import type { RefusedForm } from '../../src/usecases/plan/save-edit.ts';
import { AmountField, unitHint } from '../parts/amount-field.tsx';
import { Button } from '../parts/button.tsx';
import { dayText } from '../parts/day-text.ts';
import { TextField } from '../parts/field.tsx';
import { typedOr } from '../parts/form-state.tsx';
import { KeepingLines } from '../parts/keeping-lines.tsx';
import { isMeasure } from '../parts/quantity-text.ts';
import { stockBookPath } from '../stock/stock-book-text.ts';
import { stockText } from './buying-text.ts';

interface StockLineProps {
  stock: StockFacts;
  today: string;
  refused: RefusedForm | null;
}

/** What is in the yard of one material, as a sentence, with a way to correct it. */
export const StockLine: FC<StockLineProps> = ({ stock, today, refused }) => (
  <li class="stock" id={`stock-${stock.key}`}>
    <div>
      <h3>{stock.name}</h3>
      <p>{stockText(stock, today)}</p>
      {stock.keeping && <KeepingLines keeping={stock.keeping} unit={stock.unit} today={today} />}
      {stock.notBefore && (
        <form method="post" action="/buying/not-to-be-had" hx-post="/buying/not-to-be-had" hx-target="#page">
          <input type="hidden" name="material" value={stock.material} />
          <p class="goes-off">Not to be had before {dayText(stock.notBefore, today)}.</p>
          <Button label={`To be had again: ${stock.name}`}>To be had again</Button>
        </form>
      )}
      {stock.note && <p class="quiet">{stock.note}</p>}
      <p class="no-print">
        <a href={stockBookPath(stock.material)} aria-label={`Stock book: ${stock.name}`}>
          Stock book
        </a>
      </p>
    </div>
    <details class="otherwise" open={refused !== null}>
      <summary aria-label={`Count: ${stock.name}`}>Count</summary>
      <form class="field-row" method="post" action="/buying/counted" hx-post="/buying/counted" hx-target="#page">
        <input type="hidden" name="material" value={stock.material} />
        <input type="hidden" name="bookWas" value={stock.book} />
        <input type="hidden" name="line" value={stock.key} />
        <AmountField
          name="counted"
          id={`counted-${stock.key}`}
          label={`${stock.offcuts ? 'Whole ones' : 'In the yard'} now${unitHint(stock.unit)}`}
          counts={!isMeasure(stock.unit)}
          value={refused?.typed.counted ?? ''}
          errors={refused?.errors ?? {}}
        />
        {stock.offcuts && <input type="hidden" name="offcutsWas" value={stock.offcuts.field} />}
        {stock.offcuts && (
          <TextField
            name="offcuts"
            id={`offcuts-${stock.key}`}
            label="Offcuts now"
            hint={`By length: ${stock.offcuts.example}. Empty: none.`}
            value={typedOr(refused?.typed.offcuts, refused?.typed.offcutsWas, stock.offcuts.field)}
            errors={refused?.errors ?? {}}
          />
        )}
        <Button label={`Correct: ${stock.name}`}>Correct</Button>
      </form>
    </details>
  </li>
);
