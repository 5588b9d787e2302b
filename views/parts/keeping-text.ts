import { countText, plural } from '../../shared/plural.ts';
import type { UnusedFacts } from '../../src/usecases/buying/buying-supplies.ts';
import type { KeepingFacts } from '../../src/usecases/buying/keeping-facts.ts';
import { dayText } from './day-text.ts';
import { amountText } from './quantity-text.ts';

/** What is warned of what is in the yard and goes off: "3 bags came Tue 12 Jan and keep 90 days: check them before use." */
export const keepingLines = (
  { days, past, late }: Omit<KeepingFacts, 'undated'>,
  unit: string,
  today: string,
): string[] => [
  ...past.map(({ quantity, cameOn }) => {
    const one = quantity === 1;
    return `${amountText(quantity, unit)} came ${dayText(cameOn, today)} and ${one ? 'keeps' : 'keep'} ${countText(days, 'day')}: check ${one ? 'it' : 'them'} before use.`;
  }),
  ...late.map(
    ({ quantity, until }) =>
      `${amountText(quantity, unit)} ${plural(quantity, 'keeps', 'keep')} until ${dayText(until, today)}, and by plan ${plural(quantity, 'is', 'are')} used after that.`,
  ),
];

/** "Keeps 90 days, until Sun 12 Jul: 4 bags have no use by then, as planned." */
export const unusedText = ({ quantity, unit, days, until }: UnusedFacts, today: string): string =>
  `Keeps ${countText(days, 'day')}, until ${dayText(until, today)}: ${amountText(quantity, unit)} ${plural(quantity, 'has', 'have')} no use by then, by today's plan.`;
