import { DAY_NAMES } from '../../shared/day-names.ts';
import { listText } from '../../shared/list-text.ts';
import { countText } from '../../shared/plural.ts';
import { WEEKDAYS, type Weekday } from '../../shared/time.ts';
import type { YardSupplier } from '../../src/usecases/yard/show-suppliers.ts';
import { dayText } from '../parts/day-text.ts';
import { moneyText } from '../parts/money-text.ts';

const isDay = (text: string): text is Weekday => WEEKDAYS.some((day) => day === text);

/** "Monday to Saturday", "Tuesday and Friday", "every day". */
const daysText = (days: readonly string[]): string => {
  const named = WEEKDAYS.filter((day) => days.includes(day));
  if (named.length === WEEKDAYS.length) return 'every day';
  const [first, last] = [WEEKDAYS.indexOf(named[0] ?? 'MO'), WEEKDAYS.indexOf(named.at(-1) ?? 'MO')];
  if (named.length > 2 && last - first === named.length - 1)
    return `${DAY_NAMES[named[0]!]} to ${DAY_NAMES[named.at(-1)!]}`;
  return listText(named.filter(isDay).map((day) => DAY_NAMES[day]));
};

const whenText = ({ openDays, deliveryDays, delivers, fetched }: YardSupplier): string => {
  const open = openDays === null ? 'Open by a rule' : `Open ${daysText(openDays)}`;
  if (fetched !== false || !delivers) return `${open}.`;
  return `${open}, ${deliveryDays === null ? 'brings things by a rule' : `brings things ${daysText(deliveryDays)}`}.`;
};

const closedText = (closed: readonly string[], today: string): string => {
  const [next, ...more] = closed.filter((date) => date >= today);
  if (!next) return '';
  return ` Closed ${dayText(next, today)}${more.length > 0 ? ` and on ${countText(more.length, 'more day')}` : ''}.`;
};

const asksText = ({ minimumOrder, deliveryPrice, fetched, texts }: YardSupplier, currency: string): string =>
  [
    minimumOrder > 0 && `Least order ${moneyText(minimumOrder, currency)}.`,
    deliveryPrice > 0 && `${fetched ? 'A trip' : 'A delivery'} costs ${moneyText(deliveryPrice, currency)}.`,
    texts.carriesKg && `${texts.carriesKg} at once.`,
  ]
    .filter(Boolean)
    .join(' ');

/** "Fetched there. Open Monday to Saturday. Closed Mon 3 May. Least order €60.00." */
export const supplierLines = (supplier: YardSupplier, today: string, currency: string): string[] => {
  const how = supplier.fetched === undefined ? '' : supplier.fetched ? 'Fetched there. ' : 'Brought. ';
  const asks = asksText(supplier, currency);
  return [
    `${how}${whenText(supplier)}${closedText(supplier.closed, today)}${asks ? ` ${asks}` : ''}`,
    supplier.sells.length === 0
      ? 'Nothing in the stock book comes from it.'
      : `Sells ${listText([...supplier.sells])}.`,
  ];
};

/** "3 suppliers." */
export const suppliersAnswer = (count: number): string =>
  count === 0 ? 'No supplier is known yet.' : `${countText(count, 'supplier')}.`;
