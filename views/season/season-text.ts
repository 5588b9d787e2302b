import { daysText } from '../../shared/days-text.ts';
import { listText } from '../../shared/list-text.ts';
import { countText, plural } from '../../shared/plural.ts';
import type { HeldUpKind } from '../../src/usecases/season/held-up.ts';
import type { SeasonModel } from '../../src/usecases/season/show-season.ts';
import { moneyText } from '../parts/money-text.ts';
import { amountText, quantityText } from '../parts/quantity-text.ts';

/** How a year went. */
export const SEASON = '/season';

/** "2027 so far: 214 pieces made, 12 orders handed over and 11 of 12 dates kept." */
export const seasonAnswer = ({ year, isOver, made, sold }: SeasonModel): string => {
  const told = [
    ...(made.out > 0 ? [`${countText(made.out, 'piece')} made`] : []),
    ...(sold.orders > 0 ? [`${countText(sold.orders, 'order')} handed over`] : []),
    ...(sold.promised > 0 ? [`${sold.kept} of ${countText(sold.promised, 'date')} kept`] : []),
  ];
  const when = isOver ? String(year) : `${year} so far`;
  return `${when}: ${told.length > 0 ? listText(told) : `nothing ${isOver ? 'is' : 'is yet'} on record`}.`;
};

/** "203 good, 4 to mend, 7 scrap": what became of pieces, nothing left out but what there was none of. */
export const becameText = ({ good, mend, scrap }: SeasonModel['made']): string =>
  [`${good} good`, ...(mend > 0 ? [`${mend} to mend`] : []), `${scrap} scrap`].join(', ');

/** "3 × corner broken, 2 without a reason" */
export const reasonsText = (reasons: SeasonModel['reasons']): string =>
  listText(
    reasons.map(({ reason, count }) => (reason === null ? `${count} without a reason` : `${count} × ${reason}`)),
  );

/** "8 × Planter, 16 × Corner clip and 1.5 m of Pipe" */
export const soldText = ({ lines }: SeasonModel['sold']): string =>
  listText(
    lines.map(
      ({ name, quantity, unit }) => `${quantityText(quantity, unit)} ${unit && unit !== 'each' ? 'of ' : ''}${name}`,
    ),
  );

/** "€1,234.00 was asked for them; of 2 orders no price is on record." */
export const askedText = ({ asked, notAsked, orders, currency }: SeasonModel['sold']): string => {
  if (notAsked === orders) return 'No price is on record for them.';
  const rest = notAsked > 0 ? `; of ${countText(notAsked, 'order')} no price is on record` : '';
  return `${moneyText(asked, currency)} was asked for them${rest}.`;
};

const FEW = 4;

/** "11 of 12 dates given were kept. One was 7 days late." */
export const keptText = ({ promised, kept, daysLate }: SeasonModel['sold']): string => {
  if (promised === 0) return 'No order that had a date was handed over.';
  const those = `${kept} of ${countText(promised, 'date')} given ${plural(kept, 'was', 'were')} kept`;
  if (daysLate.length === 0) return `${those}.`;
  const late = daysLate.length <= FEW ? listText(daysLate.map(daysText)) : `up to ${daysText(daysLate[0] ?? 0)}`;
  return `${those}; the ${daysLate.length === 1 ? 'other was' : 'others were'} ${late} late.`;
};

/** "A date counts as it was given last. As it was given first: 9 of 12 kept; of 2 orders the first date is not on record." */
export const firstText = ({ promised, first }: SeasonModel['sold']): string => {
  const last = 'A date counts as it was given last.';
  if (first.promised === 0) return last;
  const lacking = promised - first.promised;
  const rest = lacking > 0 ? `; of ${countText(lacking, 'order')} the first date is not on record` : '';
  return `${last} As it was given first: ${first.kept} of ${first.promised} kept${rest}.`;
};

const HELD_UP: Readonly<Record<HeldUpKind, string>> = {
  moulds: 'Moulds damaged or out of use',
  hours: 'Hours called off or changed',
  goods: 'Goods late, short or spoiled',
  pieces: 'Pieces not good, or not hard yet',
  work: 'Work done otherwise than planned',
  orders: 'Orders taken or changed',
  weather: 'Weather',
  time: 'Time gone by with work not recorded',
  figures: 'Figures of the yard changed',
};

export const heldUpWords = (kind: HeldUpKind): string => HELD_UP[kind];

/** "Moulds damaged or out of use cost most: 21 days, each order by itself." */
export const heldUpAnswer = (heldUp: SeasonModel['heldUp']): string => {
  const [most] = heldUp;
  return most
    ? `${HELD_UP[most.kind]} cost most: ${daysText(most.days)} in all, counted order by order.`
    : 'Nothing on record moved the day of an order with a date to a later one.';
};

/** "900 no. 1 earned its place best: 62 good pieces. Not filled: Coping no. 2." */
export const mouldsText = (moulds: SeasonModel['moulds']): string => {
  const [best] = moulds.filter(({ good }) => good > 0);
  const idle = moulds.filter(({ out }) => out === 0);
  const first = best
    ? `${best.name} earned its place best: ${countText(best.good, 'good piece')}.`
    : 'Which mould earned its place is told once pieces that come out are recorded.';
  return idle.length > 0 && best ? `${first} Nothing came out of ${listText(idle.map(({ name }) => name))}.` : first;
};

/** "0.52 bags" of a material, for one piece. */
export const eachText = (quantity: number, unit: string): string => amountText(quantity, unit);

/** The title of the weeks. */
export const weeksTitle = ({ year }: SeasonModel): string =>
  `Pieces out of their moulds by week: ${year} filled, ${year - 1} outlined`;
