import { habitsOfYard } from '../../../db/stores/habits-store.ts';
import { setKitPrice } from '../../../db/stores/money-store.ts';
import { done, type Outcome, refuse, type UseCaseContext } from '../core/context.ts';
import { type Changed, changing } from '../plan/changing.ts';
import type { FormFields } from '../typed/form-fields.ts';
import { moneyOrNone } from '../typed/money-field.ts';
import { TypedReader } from '../typed/typed-reader.ts';

/** What is asked for a kit, as it is typed; empty: by the margin. Refused at `price`. */
export const priceKit = (
  context: UseCaseContext,
  id: string,
  fields: FormFields,
): Promise<Outcome<Changed<{ name: string }>>> =>
  changing(
    context,
    { kind: 'kit priced', words: ({ name }) => `Price of ${name} changed` },
    async (tx, yard) => {
      const kit = yard.kits.find((one) => one.id === id);
      if (!kit) return refuse('price', 'That kit is not there any more. Nothing was changed.');
      const reader = new TypedReader(fields);
      const read = reader.outcome(moneyOrNone(reader, 'price', (await habitsOfYard(tx)).currency));
      if (!read.ok) return read;
      await setKitPrice(tx, id, read.value);
      return done({ name: kit.name });
    },
    { carryOn: (plan) => plan },
  );
