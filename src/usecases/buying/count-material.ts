import type { Fault } from '../../../shared/fault.ts';
import { done, type Outcome, refuse, type UseCaseContext } from '../core/context.ts';
import { type Changed, changing } from '../plan/changing.ts';
import type { AmountTyped } from '../typed/amount-typed.ts';
import type { CountTyped } from '../typed/purchase-form.ts';
import { type Counted, countOne } from './count-one.ts';

/** Bags are counted beside the field for all of it. */
const atBags = ({ path, message }: Fault): Fault => ({
  path: path.startsWith('Bags') ? `counted${path}` : path,
  message,
});

/**
 * The maker has counted: the stock book says what is really in the yard, of what is cut the whole ones and what is left of others. `bookWas`
 * is what it had when the form was shown (`bookOf`): where it is other by now, that is said first. A fault of bags is at their field (`countedBags0`).
 */
export const countMaterial = (
  context: UseCaseContext,
  id: string,
  counted: AmountTyped,
  { offcuts = null, bags = [], bookWas = null }: Partial<Omit<CountTyped, 'counted'>> = {},
): Promise<Outcome<Changed<Counted>>> =>
  changing(
    context,
    { kind: 'counted', words: ({ name, now, before }) => `${name} counted: ${now} in the yard, not ${before}` },
    async (tx) => {
      const one = await countOne(tx, id, { counted, offcuts, bags, bookWas }, context.now);
      if (!one.ok) return { ok: false, faults: one.faults.map(atBags) };
      return one.value ? done(one.value) : refuse('counted', 'The stock book says so already. Nothing was changed.');
    },
  );
