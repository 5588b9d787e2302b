import { dateOfDay, dayNumber } from '../../shared/time.ts';
import type { YardFile } from '../../shared/yard-file.ts';
import { diceOf } from './random-yard/dice.ts';

/**
 * A random yard in which some dates are only wanted, some are wanted earlier than they were given, and nothing is poured
 * for some orders before a day.
 */
export const withDatesWanted = (yard: YardFile, seed: number): YardFile => {
  const dice = diceOf(seed * 31 + 7);
  const today = dayNumber(yard.yard.now.slice(0, 10));
  const orders = yard.orders.map(({ due, ...order }) => {
    const kind = dice.pick(['given', 'wanted', 'both'] as const);
    const notBefore = dice.chance(0.3) ? dateOfDay(today + dice.whole(-3, 40)) : undefined;
    const dates = {
      ...(due !== undefined && kind !== 'wanted' ? { due } : {}),
      ...(due !== undefined && kind !== 'given' ? { wanted: dateOfDay(dayNumber(due) - dice.whole(0, 10)) } : {}),
    };
    return { ...order, ...dates, ...(notBefore === undefined ? {} : { notBefore }) };
  });
  return { ...yard, orders };
};
