import type { FC } from 'hono/jsx';
import { listText } from '../../shared/list-text.ts';
import { countText, plural } from '../../shared/plural.ts';
import type { RealFacts } from '../../src/usecases/money/real-facts.ts';
import type { OrderMoneyModel } from '../../src/usecases/money/show-order-money.ts';
import { dayText } from '../parts/day-text.ts';
import { moneyText } from '../parts/money-text.ts';
import { GROUP_WORDS, percentText } from './money-text.ts';

/** "It cost €12.30 more than estimated, and leaves 28 % of the price." */
const realAnswer = (
  { estimated, real, isMore }: RealFacts,
  { price, currency }: Pick<OrderMoneyModel, 'price' | 'currency'>,
): string => {
  const over = real.total - estimated.total;
  const text = moneyText(Math.abs(over), currency);
  const beside =
    Math.abs(over) < 0.0005 ? 'just what was estimated' : `${text} ${over > 0 ? 'more' : 'less'} than estimated`;
  const left = price === null || price === 0 ? null : (price - real.total) / price;
  const leaves =
    left === null ? '' : left < 0 ? ', more than the price' : `, and leaves ${percentText(left)} of the price`;
  return `It cost ${beside}${leaves}.${isMore ? ' Not all of it is counted.' : ''}`;
};

/** What the real cost is read off. */
const recordText = ({ pieces, onRecord, tasks, measured, scrapped, thrownAway }: RealFacts): string => {
  const lost = [
    ...(scrapped > 0 ? [`${countText(scrapped, 'piece')} for it came out as scrap`] : []),
    ...(thrownAway > 0 ? [`${countText(thrownAway, 'mix', 'mixes')} for it went off`] : []),
  ];
  const found = `${onRecord} of ${countText(pieces, 'piece')} ${plural(onRecord, 'is', 'are')} on record`;
  const timed = tasks === 0 ? '' : `; ${measured} of ${countText(tasks, 'task')} timed by taps`;
  const rest = onRecord === pieces && measured === tasks ? '' : ', the rest by the yard’s figures';
  return `${found}${timed}${rest}.${lost.length > 0 ? ` ${listText(lost)}.` : ''}`;
};

/** Where parts and cuts are read off. */
const goodsText = ({ takings, booked }: RealFacts): string => {
  if (booked === 0) return 'Parts and cuts are by the yard’s figures.';
  if (booked === takings) return 'Parts and cuts are by the stock book.';
  return `Parts and cuts are by the stock book for ${booked} of ${takings} batches and packings, by the yard’s figures for the rest.`;
};

interface RealTableProps {
  real: RealFacts;
  money: OrderMoneyModel;
}

/** What an order was estimated at and what it cost, part by part. */
export const RealTable: FC<RealTableProps> = ({ real, money }) => {
  const { currency, today } = money;
  const rows = Object.entries(GROUP_WORDS).map(([group, word]) => ({
    word,
    estimated: real.estimated.groups[group as keyof typeof GROUP_WORDS],
    real: real.real.groups[group as keyof typeof GROUP_WORDS],
  }));
  return (
    <div class="real-cost">
      <h3>Estimated and real</h3>
      <p>{realAnswer(real, money)}</p>
      <table class="cost-table">
        <thead>
          <tr>
            <th scope="col" />
            <th scope="col" class="number">
              {real.estimatedOn ? `Estimated ${dayText(real.estimatedOn, today)}` : 'By today’s figures'}
            </th>
            <th scope="col" class="number">
              Real
            </th>
          </tr>
        </thead>
        <tbody>
          {rows
            .filter((row) => row.estimated !== 0 || row.real !== 0)
            .map((row) => (
              <tr>
                <th scope="row">{row.word}</th>
                <td class="number">{moneyText(row.estimated, currency)}</td>
                <td class="number">{moneyText(row.real, currency)}</td>
              </tr>
            ))}
          <tr class="cost-total">
            <th scope="row">In all</th>
            <td class="number">{moneyText(real.estimated.total, currency)}</td>
            <td class="number">{moneyText(real.real.total, currency)}</td>
          </tr>
        </tbody>
      </table>
      <p class="quiet">
        {recordText(real)} {goodsText(real)}
      </p>
    </div>
  );
};
