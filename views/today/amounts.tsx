import type { FC } from 'hono/jsx';
import type { AmountFacts } from '../../src/usecases/today/session-step.ts';
import { amountOfText } from './today-text.ts';

/** Each line by itself: a name may have commas of its own. */
export const Lines: FC<{ lines: readonly string[] }> = ({ lines }) => (
  <ul class="amounts">
    {lines.map((line) => (
      <li>{line}</li>
    ))}
  </ul>
);

/** What is done one after another. */
export const InOrder: FC<{ lines: readonly string[] }> = ({ lines }) => (
  <ol class="in-order">
    {lines.map((line) => (
      <li>{line}</li>
    ))}
  </ol>
);

/** What goes in. */
export const Amounts: FC<{ amounts: readonly AmountFacts[] }> = ({ amounts }) => (
  <Lines lines={amounts.map(amountOfText)} />
);
