import type { FC } from 'hono/jsx';
import type { CostFacts } from '../../src/usecases/money/cost-facts.ts';
import { moneyText } from '../parts/money-text.ts';
import { GROUP_WORDS } from './money-text.ts';

interface CostTableProps {
  cost: CostFacts;
  /** Figures are missing in it. */
  isMore?: boolean;
  currency: string;
  /** What it is the cost of. */
  of: string;
}

/** A cost by its parts, which come to what stands below them. */
export const CostTable: FC<CostTableProps> = ({ cost, isMore = false, currency, of }) => (
  <table class="cost-table">
    <caption class="unseen">What {of} costs</caption>
    <tbody>
      {Object.entries(GROUP_WORDS)
        .map(([group, word]) => ({ word, amount: cost.groups[group as keyof CostFacts['groups']] }))
        .filter(({ amount }) => amount !== 0)
        .map(({ word, amount }) => (
          <tr>
            <th scope="row">{word}</th>
            <td class="number">{moneyText(amount, currency)}</td>
          </tr>
        ))}
      <tr class="cost-total">
        <th scope="row">{isMore ? 'Costs more than' : 'Costs'}</th>
        <td class="number">{moneyText(cost.total, currency)}</td>
      </tr>
    </tbody>
  </table>
);
