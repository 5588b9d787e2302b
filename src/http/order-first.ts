import type { Context } from 'hono';
import type { Outcome, UseCaseContext } from '../usecases/core/context.ts';
import { type OrderEdit, saveOrder } from '../usecases/orders/save-order.ts';
import type { FormFields } from '../usecases/typed/form-fields.ts';
import type { Save } from './form-route.tsx';

/** Reads a form of an order, and shows first a date in it that is not kept, makes others later or has gone by. */
export const orderFirst =
  <Read, More>(
    read: (fields: FormFields, context: UseCaseContext) => Promise<Outcome<Read>>,
    edit: (typed: Read, c: Context) => OrderEdit<More>,
  ): Save<{ id: string } & More> =>
  async (context, fields, c) => {
    const typed = await read(fields, context);
    if (!typed.ok) return { kind: 'refused', faults: typed.faults };
    return saveOrder(context, edit(typed.value, c), fields.seen);
  };
