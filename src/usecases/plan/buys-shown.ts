import type { UnitSystem } from '../../../shared/units.ts';
import { shownAmount } from '../typed/measures.ts';
import type { CurrentPlan } from './remake-plan.ts';

/** Something to be bought, in the unit that is shown, and the last day to order it. */
export interface BuyAhead {
  name: string;
  unit: string;
  quantity: number;
  orderBy: string;
}

/** What a plan has to be bought, the soonest to be ordered first. */
export const buysShown = ({ plan, yard }: Pick<CurrentPlan, 'plan' | 'yard'>, system: UnitSystem): BuyAhead[] =>
  [...plan.buys]
    .sort((a, b) => a.orderBy.localeCompare(b.orderBy))
    .map(({ material, quantity, orderBy }) => {
      const { name, unit } = yard.materials.find(({ id }) => id === material) ?? { name: material, unit: '' };
      return shownAmount({ name, unit, quantity, orderBy }, system);
    });
