import { listText } from '../../shared/list-text.ts';
import { plural } from '../../shared/plural.ts';
import type { SpokenForModel, SpokenStep } from '../../src/usecases/stock/show-spoken-for.ts';
import { dayText, onDayText } from '../parts/day-text.ts';
import { amountText, LEAST_SHOWN } from '../parts/quantity-text.ts';

/** Where it is seen what a material is planned for. */
export const SPOKEN_FOR = '/buying/spoken-for';

/** The page of one material. */
export const spokenForPath = (material: string): string => `${SPOKEN_FOR}?${new URLSearchParams({ of: material })}`;

/** The first line: until when it will do. */
export const spokenForAnswer = ({ name, shortOn, steps, today }: SpokenForModel): string => {
  if (shortOn !== null) return `${name} runs short ${onDayText(shortOn, today)}, unless more is bought.`;
  return steps.some(({ kind }) => kind === 'used')
    ? `What there is of ${name} and what is on its way will do.`
    : `Nothing that is planned needs ${name}.`;
};

const goesOffText = (goesOff: number, unit: string): string =>
  goesOff >= LEAST_SHOWN
    ? ` ${amountText(goesOff, unit)} ${plural(goesOff, 'goes off before it is', 'go off before they are')} needed.`
    : '';

/** "9 bags in the yard, 6 spoken for, 1 spare. 2 bags go off before they are needed." */
export const spokenForNote = ({ inYard, spokenFor, spare, past, goesOff, unit }: SpokenForModel): string => {
  const gone = past >= LEAST_SHOWN ? ` ${amountText(past, unit)} past the date on them, in no line of this.` : '';
  const there = `${inYard < LEAST_SHOWN ? 'None' : amountText(inYard, unit)} in the yard`;
  return `${there}, ${amountText(spokenFor, '')} spoken for, ${amountText(spare, '')} spare.${goesOffText(goesOff, unit)}${gone}`;
};

/** "For School garden and stock", "Comes", "Past its date". */
export const stepText = ({ kind, orders, forStock }: SpokenStep): string => {
  if (kind === 'comes') return 'Comes';
  if (kind === 'past its date') return 'Past its date';
  return `For ${listText([...orders.map(({ customer }) => customer), ...(forStock ? ['stock'] : [])])}`;
};

/** "bag date Sun 2 May" */
export const bagDatesText = ({ bagDates }: SpokenStep, today: string): string =>
  bagDates.length === 0 ? '' : `bag date ${listText(bagDates.map((one) => dayText(one, today)))}`;

/** What the chart shows, in a sentence. */
export const chartTitle = (model: SpokenForModel): string => {
  const { name, unit, inYard, past, steps, shortOn, today } = model;
  const comes = steps
    .filter(({ kind }) => kind === 'comes')
    .map(({ quantity, on }) => `${amountText(quantity, '')} more ${onDayText(on, today)}`);
  const now = `${amountText(inYard - past, unit)} now`;
  const end = shortOn === null ? 'and that will do' : `and it runs short ${onDayText(shortOn, today)}`;
  return `How much there is of ${name}, by today's plan: ${[now, ...comes].join(', ')}, ${end}.`;
};
