import { done, type Outcome } from '../core/context.ts';
import { amountIn } from './amount-typed.ts';
import type { FormFields } from './form-fields.ts';
import type { PurchaseTyped } from './purchase-form.ts';

/** A whole trip as the page had it: who sells it, and each thing. */
export interface TripTyped {
  name: string;
  lines: PurchaseTyped[];
}

/** More than that no trip has: a form without an end is none. */
const MOST_LINES = 500;

/** The form that buys a whole trip: `material0`, `quantity0`, `on0` and `price0`, and so on. */
export const tripTyped = (fields: FormFields): Outcome<TripTyped> => {
  const lines: PurchaseTyped[] = [];
  for (let i = 0; i < MOST_LINES && fields[`material${i}`] !== undefined; i += 1)
    lines.push({
      material: fields[`material${i}`] ?? '',
      quantity: amountIn(fields, `quantity${i}`),
      ...{ on: fields[`on${i}`] ?? '', price: fields[`price${i}`] ?? '' },
    });
  return done({ name: fields.name ?? '', lines });
};
