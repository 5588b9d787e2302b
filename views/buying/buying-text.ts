import { listText, shortListText } from '../../shared/list-text.ts';
import { plural } from '../../shared/plural.ts';
import type {
  BuyingModel,
  BuyLineFacts,
  ComingFacts,
  Purpose,
  StockFacts,
} from '../../src/usecases/buying/buying-facts.ts';
import { dayText } from '../parts/day-text.ts';
import { amountText, LEAST_SHOWN, quantityText } from '../parts/quantity-text.ts';

const figure = (quantity: number): string => String(Number(quantity.toFixed(2)));

/** "4 bags of Fast-setting mortar", "25 × Corner clip". */
export const goodsText = ({
  quantity,
  unit,
  name,
  asTyped = null,
}: Pick<BuyLineFacts, 'quantity' | 'unit' | 'name'> & { asTyped?: string | null }): string => {
  if (asTyped !== null) return `${asTyped} of ${name}`;
  return unit === 'each' || unit === ''
    ? `${figure(quantity)} × ${name}`
    : `${quantityText(quantity, unit)} of ${name}`;
};

/** Names on one line; what is spoken for by whom has a page of its own. */
const NAMES_SHOWN = 8;

/** Names that have commas of their own are set apart by semicolons. */
const namesText = (names: readonly string[]): string => {
  const shown = names.slice(0, NAMES_SHOWN);
  if (!shown.some((name) => name.includes(','))) return shortListText(names, NAMES_SHOWN);
  return [...shown, ...(names.length > NAMES_SHOWN ? [`${names.length - NAMES_SHOWN} more`] : [])].join('; ');
};

const BESIDE = { 'nearly used up': 'Nearly used up', 'to stand ready': 'For what is to stand ready' } as const;

/** "For School garden and stock", "To have 2 bags in the yard again". */
export const purposeText = (
  { customers, keep }: Purpose,
  unit: string,
  beside: BuyLineFacts['beside'] = null,
): string => {
  if (beside !== null) return BESIDE[beside];
  const named = customers.filter((customer) => customer !== null);
  const whom = [...named, ...(customers.includes(null) ? ['stock'] : [])];
  const parts = [
    whom.length > 0 && `For ${namesText(whom)}`,
    keep !== null && `to have ${amountText(keep, unit)} in the yard again`,
  ];
  const text = parts.filter(Boolean).join(', and ');
  return text === '' ? 'Rounded up to whole packs' : text[0]!.toUpperCase() + text.slice(1);
};

const spokenText = ({ spokenFor, spare, inYard, past, goesOff }: StockFacts): string => {
  if (inYard === 0) return '';
  const gone = [
    past >= LEAST_SHOWN && `, ${figure(past)} past ${plural(past, 'its', 'their')} date`,
    goesOff >= LEAST_SHOWN && `, ${figure(goesOff)} going off before ${plural(goesOff, 'it is', 'they are')} needed`,
  ]
    .filter(Boolean)
    .join('');
  if (spokenFor === 0) return `, none spoken for${gone}`;
  if (spare < LEAST_SHOWN && gone === '') return ', all spoken for';
  return `, ${figure(spokenFor)} spoken for, ${figure(spare)} spare${gone}`;
};

const comingText = ({ coming, inYard }: StockFacts, today: string): string =>
  coming
    .map(({ quantity, on }) => {
      const more = `${figure(quantity)}${inYard === 0 ? '' : ' more'}`;
      return on < today ? `; ${more} due since ${dayText(on, today)}` : `; ${more} on ${dayText(on, today)}`;
    })
    .join('');

/** "2232 mm and 2 × 1400 mm". */
const offcutsText = ({ lengths }: NonNullable<StockFacts['offcuts']>): string =>
  listText(lengths.map(({ length, count }) => (count === 1 ? length : `${count} × ${length}`)));

/** "2 whole"; without a rest of one beside them "2 sticks". */
const thereText = ({ inYard, unit, offcuts, asTyped }: StockFacts): string => {
  const hasRests = offcuts !== null && offcuts.lengths.length > 0;
  if (inYard === 0) return hasRests ? 'None whole' : 'None';
  return hasRests ? `${figure(inYard)} whole` : (asTyped ?? amountText(inYard, unit));
};

/** "9 bags in the yard, 6 spoken for, 3 spare; 6 more on Fri 9 Apr. Always keep 2." With a date: "9 bags in the yard, 6 spoken for, 0 spare, 3 past their date." Of sticks: "2 whole in the yard, 1 spoken for, 1 spare. Offcuts: 2232 mm and 1400 mm." */
export const stockText = (stock: StockFacts, today: string): string => {
  const { offcuts } = stock;
  const rests = offcuts && offcuts.lengths.length > 0 ? ` ${offcuts.called}: ${offcutsText(offcuts)}.` : '';
  const keep = stock.minimum > 0 ? ` Always keep ${figure(stock.minimum)}.` : '';
  const cannot = stock.canBeBought ? '' : " Can't be bought.";
  return `${thereText(stock)} in the yard${spokenText(stock)}${comingText(stock, today)}.${rests}${keep}${cannot}`;
};

type Bags = StockFacts['bags'][number];

/** "bag date Sun 2 May, opened Sat 10 Apr" */
export const bagText = ({ useBy, openedAt }: Bags, today: string): string =>
  [
    useBy === null ? '' : `bag date ${dayText(useBy, today)}`,
    openedAt === null ? '' : `opened ${dayText(openedAt.slice(0, 10), today)}`,
  ]
    .filter(Boolean)
    .join(', ');

/** "0.5, opened Sat 10 Apr; 2 of bag date Sun 2 May." What is past its date is said apart. */
export const bagsText = ({ bags }: StockFacts, today: string): string =>
  `${bags
    .filter(({ isPast }) => !isPast)
    .map((one) => `${figure(one.quantity)} ${one.useBy === null ? '' : 'of '}${bagText(one, today)}`)
    .join('; ')}.`;

/** "Past its date: 3 bags, bag date Sun 2 May. No plan uses it." */
export const pastText = ({ unit }: StockFacts, bags: Bags, today: string): string =>
  `Past its date: ${amountText(bags.quantity, unit)}, ${bagText(bags, today)}. No plan uses ${plural(bags.quantity, 'it', 'them')}.`;

/** "Expected Fri 9 Apr", "Was expected Fri 2 Apr". */
export const expectedText = ({ on }: Pick<ComingFacts, 'on'>, today: string): string =>
  on < today
    ? `Was expected ${dayText(on, today)}`
    : on === today
      ? 'Expected today'
      : `Expected ${dayText(on, today)}`;

const linesOf = (weeks: BuyingModel['weeks']): BuyLineFacts[] =>
  weeks.flatMap(({ trips }) => trips.flatMap(({ lines }) => lines)).sort((a, b) => a.orderBy.localeCompare(b.orderBy));

/** The first line of the page: what to order by when. */
export const buyingAnswer = ({ weeks, thisWeek, today }: BuyingModel): string => {
  const [first, ...more] = linesOf(weeks);
  if (!first) return 'Nothing has to be bought for what is planned.';
  const by = first.orderBy === today ? 'today' : `by ${dayText(first.orderBy, today)}`;
  const text = `${goodsText(first)} ${by}`;
  if (first.orderBy >= thisWeek && weeks[0]?.week !== thisWeek) return `Nothing to order this week. Next: ${text}.`;
  const others = more.filter(({ orderBy }) => orderBy === first.orderBy).length;
  return `Order ${text}${others > 0 ? `, and ${others === 1 ? 'one more thing' : `${others} more things`}` : ''}.`;
};

const thingsText = (count: number): string => (count === 1 ? 'One thing' : `${count} things`);

/** How much there is to order, now and later. */
export const buyingNote = ({ weeks, thisWeek }: BuyingModel): string => {
  const here = linesOf(weeks.filter(({ week }) => week === thisWeek)).length;
  const later = linesOf(weeks).length - here;
  if (here + later === 0) return 'What is in the yard and on its way will do.';
  if (here === 0) return `${thingsText(later)} to order in the weeks after.`;
  return `${thingsText(here)} to order this week${later > 0 ? `, ${later} in the weeks after` : ''}.`;
};

const WEEK_DAYS = 7;

/** What the small lines of the stock show. */
export const stockTitle = (days: number): string =>
  `Each line is how much there is in the next ${days / WEEK_DAYS} weeks, by today's plan, with nothing bought that is not on its way.`;
