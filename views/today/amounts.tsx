import type { FC } from 'hono/jsx';
import type { AmountFacts } from './today-facts.ts';
import { amountOfText } from './today-text.ts';

/** What goes in, each amount by itself: a name may have commas of its own. */
export const Amounts: FC<{ amounts: readonly AmountFacts[] }> = ({ amounts }) => (
  <ul class="amounts">
    {amounts.map((amount) => (
      <li>{amountOfText(amount)}</li>
    ))}
  </ul>
);
