import type { FC } from 'hono/jsx';
import type { OrderMoneyModel } from '../../src/usecases/money/show-order-money.ts';
import { dayText } from '../parts/day-text.ts';
import { moneyText } from '../parts/money-text.ts';
import { changeText } from './quote-text.ts';

interface QuoteChangesProps {
  quote: OrderMoneyModel['quote'];
  currency: string;
  today: string;
}

const SENT_WORDS = { quote: ['Quote', 'given'], bill: ['Bill', 'sent'] } as const;

/** What has changed since the last quote was given, or the last bill sent; nothing where none was. */
export const QuoteChanges: FC<QuoteChangesProps> = ({ quote, currency, today }) => {
  if (quote === null) return null;
  const [what, done] = SENT_WORDS[quote.kind];
  const given = `${what} of ${moneyText(quote.price, quote.currency)} ${done} ${dayText(quote.on, today)}`;
  if (quote.changes.length === 0) return <p class="no-print quiet">{given}; nothing has changed since.</p>;
  return (
    <div class="no-print">
      <p>{given}. Since then:</p>
      <ul class="sentences">
        {quote.changes.map((change) => (
          <li>{changeText(change, currency, today)}</li>
        ))}
      </ul>
    </div>
  );
};
