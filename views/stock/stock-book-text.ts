import type { StockBookModel, StockLineFacts } from '../../src/usecases/stock/show-stock-book.ts';
import { dayText } from '../parts/day-text.ts';
import { amountText } from '../parts/quantity-text.ts';

/** Where the stock book of materials is. */
export const STOCK_BOOK = '/buying/book';

/** The page of one material's stock book, and with a line of those before it. */
export const stockBookPath = (material: string, before?: number): string =>
  `${STOCK_BOOK}?${new URLSearchParams({ of: material, ...(before === undefined ? {} : { before: String(before) }) })}`;

const WORDS: Readonly<Record<StockLineFacts['kind'], string>> = {
  opening: 'There when the book began',
  received: 'Came',
  used: 'Used',
  cut: 'Cut',
  counted: 'Counted',
  spoiled: 'Spoiled',
  returned: 'Taken back into stock',
  corrected: 'Set right',
};

/** What is opened to be cut is no longer a whole one; what is left of it is an offcut, or a rest. */
const doneText = ({ kind, length, quantity }: Pick<StockLineFacts, 'kind' | 'length' | 'quantity'>): string => {
  if (kind === 'used' && quantity > 0) return 'Left in what was opened';
  if (kind !== 'cut') return WORDS[kind];
  if (length === null) return 'Opened to cut from';
  return quantity > 0 ? 'Left over from a cut' : 'Cut up';
};

const whatText = (line: StockLineFacts): string => {
  // It takes back what the other line says, so its sign is the other one.
  if (line.standing === 'undoes') return `Undone: ${doneText({ ...line, quantity: -line.quantity })}`;
  return line.standing === 'again' ? `Done again: ${doneText(line)}` : doneText(line);
};

const bagText = ({ useBy, openedAt }: StockLineFacts, today: string): string =>
  [
    useBy === null ? '' : `bag date ${dayText(useBy, today)}`,
    openedAt === null ? '' : `opened ${dayText(openedAt.slice(0, 10), today)}`,
  ]
    .filter(Boolean)
    .join(', ');

/** "Used, bag date Sun 2 May", "Set right: Counted in bag until then", "Left over from a cut, 2232 mm", "Undone: Used". */
export const lineText = (line: StockLineFacts, today: string): string => {
  const parts = [whatText(line), line.length ?? '', bagText(line, today)].filter(Boolean).join(', ');
  return line.reason === null ? parts : `${parts}: ${line.reason}`;
};

/** "−2 bags", "+1" of offcuts: with a sign, and a minus as long as the plus. */
export const moreText = ({ quantity, length }: StockLineFacts, unit: string): string =>
  `${quantity < 0 ? '−' : '+'}${amountText(Math.abs(quantity), length === null ? unit : '')}`;

/** "19 bags left", "2 of 700 mm left". */
export const leftText = ({ left, length }: StockLineFacts, unit: string): string => {
  // Amounts add up to fractions: less than a thousandth is none, and a bit more than one is one.
  const rest = Math.abs(left) < 0.0005 ? 0 : Number(left.toFixed(6));
  return length === null ? `${amountText(rest, unit)} left` : `${rest} of ${length} left`;
};

/** The first line of the page. */
export const stockBookAnswer = ({ name, inYard, unit }: StockBookModel): string =>
  `${inYard === 0 ? 'None' : amountText(inYard, unit)} of ${name} in the yard.`;
