import { done, type Outcome, refuse, type UseCaseContext } from '../core/context.ts';
import { type Changed, changing } from '../plan/changing.ts';
import type { AmountTyped } from '../typed/amount-typed.ts';
import { type Counted, countOne } from './count-one.ts';

/**
 * The maker has counted: the stock book says what is really in the yard, of what is cut the whole ones and what is left of others. `bookWas`
 * is what it had when the form was shown (`bookOf`): where it is other by now, that is said first.
 */
export const countMaterial = (
  context: UseCaseContext,
  id: string,
  counted: AmountTyped,
  offcuts: string | null = null,
  bookWas: string | null = null,
): Promise<Outcome<Changed<Counted>>> =>
  changing(
    context,
    { kind: 'counted', words: ({ name, now, before }) => `${name} counted: ${now} in the yard, not ${before}` },
    async (tx) => {
      const one = await countOne(tx, id, { counted, offcuts, bookWas }, context.now);
      if (!one.ok) return one;
      return one.value ? done(one.value) : refuse('counted', 'The stock book says so already. Nothing was changed.');
    },
  );
