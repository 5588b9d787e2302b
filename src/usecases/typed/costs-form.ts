import { MOST_PERCENT, type YardCosts } from '../../../shared/money.ts';
import type { Outcome } from '../core/context.ts';
import type { FormFields } from './form-fields.ts';
import { moneyOrNone, percentOrNone } from './money-field.ts';
import { TypedReader } from './typed-reader.ts';

/** More turns than that no mould of timber makes. */
const MOST_TURNS = 100_000;

/** What a mould cost and how long it lasts, as the form says; null: as the yard says of all. */
interface MouldCostTyped {
  id: string;
  cost: number | null;
  costTurns: number | null;
}

export interface CostsTyped {
  costs: YardCosts;
  moulds: MouldCostTyped[];
}

const turnsOrNone = (reader: TypedReader, name: string): number | null =>
  reader.wholeOrNone(name, 'How many turns?', { least: 1, most: MOST_TURNS });

/** A form carries the name of each mould: what was added or renamed meanwhile is left as it is. */
const mouldsTyped = (reader: TypedReader, currency: string): MouldCostTyped[] => {
  const moulds: MouldCostTyped[] = [];
  for (let row = 0; reader.text(`mould${row}`) !== ''; row++)
    moulds.push({
      id: reader.text(`mould${row}`),
      cost: moneyOrNone(reader, `cost${row}`, currency),
      costTurns: turnsOrNone(reader, `turns${row}`),
    });
  return moulds;
};

const said = (figures: { [K in keyof YardCosts]-?: number | null }): YardCosts =>
  Object.fromEntries(Object.entries(figures).filter(([, value]) => value !== null));

/** The form of what costs are reckoned by: every field may be left empty. */
export const costsTyped = (fields: FormFields, currency: string): Outcome<CostsTyped> => {
  const reader = new TypedReader(fields);
  const costs = said({
    wageHour: moneyOrNone(reader, 'wageHour', currency),
    sessionFixed: moneyOrNone(reader, 'sessionFixed', currency),
    rejectPercent: percentOrNone(reader, 'rejectPercent', 'How many of a hundred come out as scrap?', MOST_PERCENT),
    marginPercent: percentOrNone(reader, 'marginPercent', 'How much of the price is left over?', MOST_PERCENT),
    mouldCost: moneyOrNone(reader, 'mouldCost', currency),
    mouldTurns: turnsOrNone(reader, 'mouldTurns'),
    holdingPercent: percentOrNone(
      reader,
      'holdingPercent',
      'What does stock cost in a year, of a hundred?',
      MOST_PERCENT,
    ),
  });
  return reader.outcome({ costs, moulds: mouldsTyped(reader, currency) });
};
