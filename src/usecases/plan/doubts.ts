import { daysText } from '../../../shared/days-text.ts';
import { type Doubt, doubtPath } from '../../../shared/doubt.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import type { Taken } from '../../engine/book/goods.ts';
import type { CutFrom } from '../../engine/book/sheets-cut.ts';
import { shortages } from '../../engine/book/stock-taken.ts';
import { shownUnit } from '../../engine/units/material-unit.ts';
import { done, type Outcome, refuse } from '../core/context.ts';
import { amountField } from '../typed/amount-typed.ts';

/** Asks, unless the maker is sure already. */
export const asked = (doubt: Doubt, sure: readonly Doubt[], question: string | null): Outcome<null> =>
  question === null || sure.includes(doubt) ? done(null) : refuse(doubtPath(doubt), question);

/** "90 minutes", "5 hours", "3 days", "5 weeks", "14 months", "3 years": how long something is apart. */
export const durationText = (minutes: number): string => {
  if (minutes <= 120) return `${Math.max(5, Math.round(minutes / 5) * 5)} minutes`;
  const days = Math.round(minutes / 1440);
  return minutes < 2 * 1440 ? `${Math.round(minutes / 60)} hours` : daysText(days);
};

/** What is taken from the stock, and which sticks and sheets the plan has it cut from. */
export interface Taking {
  taken: Taken;
  named: readonly CutFrom[];
}

/** "Fast-setting mortar (none in the book, 1 taken)": what the stock book has too little of for something; null for nothing. */
const shortText = (yard: YardFile, { taken, named }: Taking, system: UnitSystem): string | null => {
  const short = shortages(yard, taken, named).map(({ material: { name, unit, onHand }, amount: all }) => {
    const amount = (quantity: number) => amountField(quantity, unit, system);
    const there = onHand === 0 ? 'none' : `${amount(onHand)} ${shownUnit(unit, system).word}`;
    return `${name} (${there} in the book, ${amount(all)} taken)`;
  });
  return short.length === 0 ? null : short.join(', ');
};

/** The question about goods that the stock book has too little of; null where there is none. */
export const shortQuestion = (yard: YardFile, taking: Taking, system: UnitSystem): string | null => {
  const short = shortText(yard, taking, system);
  return short && `By the stock book there is too little ${short}. Was it there anyway? Then it is to be counted.`;
};
