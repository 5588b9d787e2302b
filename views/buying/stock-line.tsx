import type { FC } from 'hono/jsx';
import type { StockFacts } from '../../src/usecases/buying/buying-facts.ts';
import type { RefusedForm } from '../../src/usecases/plan/save-edit.ts';
import { AmountField, unitHint } from '../parts/amount-field.tsx';
import { BagsFields } from '../parts/bags-fields.tsx';
import { Button } from '../parts/button.tsx';
import { dayText } from '../parts/day-text.ts';
import { TextField, Wrong } from '../parts/field.tsx';
import { typedOr } from '../parts/form-state.tsx';
import { KeepingLines } from '../parts/keeping-lines.tsx';
import { Mark } from '../parts/mark.tsx';
import { isMeasure } from '../parts/quantity-text.ts';
import { spokenForPath } from '../stock/spoken-for-text.ts';
import { stockBookPath } from '../stock/stock-book-text.ts';
import { bagsText, bagText, pastText, stockText } from './buying-text.ts';
import { StockSmall } from './stock-small.tsx';

interface StockLineProps {
  stock: StockFacts;
  /** So many days ahead are drawn. */
  days: number;
  today: string;
  refused: RefusedForm | null;
}

/** Bags past their date, and the button that takes them out of the book: they are never gone by themselves. */
const PastBags: FC<{ stock: StockFacts; bags: StockFacts['bags'][number]; today: string }> = ({
  stock,
  bags,
  today,
}) => (
  <form class="past-bags" method="post" action="/buying/spoiled" data-hx-post="/buying/spoiled" data-hx-target="#page">
    <input type="hidden" name="material" value={stock.material} />
    <input type="hidden" name="line" value={stock.key} />
    <input type="hidden" name="useBy" value={bags.useBy ?? ''} />
    <input type="hidden" name="openedAt" value={bags.openedAt ?? ''} />
    <p class="goes-off">
      <Mark shape="triangle" /> {pastText(stock, bags, today)}
    </p>
    <Button label={`Spoiled: ${stock.name}, ${bagText(bags, today)}`}>Spoiled: take it out</Button>
  </form>
);

/** What is in the yard of one material, as a sentence, with a way to correct it. */
export const StockLine: FC<StockLineProps> = ({ stock, days, today, refused }) => (
  <li class="stock" id={`stock-${stock.key}`}>
    <div>
      <h3>{stock.name}</h3>
      <p>{stockText(stock, today)}</p>
      <StockSmall stock={stock} days={days} today={today} />
      {stock.bags.some(({ isPast }) => !isPast) && <p class="quiet">{bagsText(stock, today)}</p>}
      {stock.bags.map((bags) => bags.isPast && <PastBags stock={stock} bags={bags} today={today} />)}
      <Wrong message={refused?.errors.bags} name="bags" />
      {stock.keeping && <KeepingLines keeping={stock.keeping} unit={stock.unit} today={today} />}
      {stock.notBefore && (
        <form method="post" action="/buying/not-to-be-had" data-hx-post="/buying/not-to-be-had" data-hx-target="#page">
          <input type="hidden" name="material" value={stock.material} />
          <p class="goes-off">Not to be had before {dayText(stock.notBefore, today)}.</p>
          <Button label={`To be had again: ${stock.name}`}>To be had again</Button>
        </form>
      )}
      {stock.note && <p class="quiet">{stock.note}</p>}
      <p class="no-print stock-ways">
        <a href={stockBookPath(stock.material)} aria-label={`Stock book: ${stock.name}`}>
          Stock book
        </a>
        <a href={spokenForPath(stock.material)} aria-label={`Spoken for: ${stock.name}`}>
          Spoken for
        </a>
      </p>
    </div>
    <details class="otherwise" open={refused !== null}>
      <summary aria-label={`Count: ${stock.name}`}>Count</summary>
      <form
        class="field-row"
        method="post"
        action="/buying/counted"
        data-hx-post="/buying/counted"
        data-hx-target="#page"
      >
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
        <BagsFields
          bags={stock.bagsToCount}
          of="counted"
          id={`counted-${stock.key}`}
          unit={stock.unit}
          today={today}
          typedIn={(field) => refused?.typed[field] ?? ''}
          errors={refused?.errors ?? {}}
        />
        {stock.offcuts && <input type="hidden" name="offcutsWas" value={stock.offcuts.field} />}
        {stock.offcuts && (
          <TextField
            name="offcuts"
            id={`offcuts-${stock.key}`}
            label={`${stock.offcuts.called} now`}
            hint={`${stock.offcuts.called === 'Rests' ? 'By size' : 'By length'}: ${stock.offcuts.example}. Empty: none.`}
            value={typedOr(refused?.typed.offcuts, refused?.typed.offcutsWas, stock.offcuts.field)}
            errors={refused?.errors ?? {}}
          />
        )}
        <Button label={`Save count: ${stock.name}`}>Save count</Button>
      </form>
    </details>
  </li>
);
