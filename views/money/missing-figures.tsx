import type { FC } from 'hono/jsx';
import type { MissingFacts } from '../../src/usecases/money/cost-facts.ts';
import { missingText } from './money-text.ts';

/** What costs leave out because nobody said it, with the way to where it can be said. */
export const MissingFigures: FC<{ missing: MissingFacts }> = ({ missing }) => {
  const text = missingText(missing);
  if (text === '') return null;
  return (
    <div class="warning">
      <p class="warning-lead">Not counted, because nobody said what it costs: {text}.</p>
      <p>
        {missing.prices.length > 0 && <a href="/yard/stock">Prices of materials</a>}
        {missing.prices.length > 0 && missing.others.length + missing.moulds > 0 && ' · '}
        {missing.others.length + missing.moulds > 0 && <a href="/yard/costs">What work costs</a>}
      </p>
    </div>
  );
};
