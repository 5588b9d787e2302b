import { moveInStock } from '../../../db/stores/stock-store.ts';
import { minuteOf } from '../../../shared/time.ts';
import { done, type Outcome, refuse, type UseCaseContext } from '../core/context.ts';
import { type Changed, changing } from '../plan/changing.ts';
import type { FormFields } from '../typed/form-fields.ts';

/** Which bags: of a material, by the date on them and by when they were opened; empty for neither. */
interface BagsTyped {
  material: string;
  useBy: string;
  openedAt: string;
}

/** Bags that are no good any more, as a form names them. */
export const bagsTyped = ({ material = '', useBy = '', openedAt = '' }: FormFields): Outcome<BagsTyped> =>
  done({ material, useBy, openedAt });

const isThen = (one: string | undefined, named: string): boolean =>
  named === '' ? one === undefined : one !== undefined && minuteOf(one) === minuteOf(named);

/** Bags are no good any more: all of them leave the stock book, with a line that says so. Refused where there are none such. */
export const spoilBags = (
  context: UseCaseContext,
  { material: id, useBy, openedAt }: BagsTyped,
): Promise<Outcome<Changed<{ name: string }>>> =>
  changing(
    context,
    { kind: 'spoiled', words: ({ name }) => `${name} taken out of the stock book: past its date` },
    async (tx, yard) => {
      const material = yard.materials.find((one) => one.id === id);
      const lot = material?.lots?.find((one) => (one.useBy ?? '') === useBy && isThen(one.openedAt, openedAt));
      if (!material || !lot)
        return refuse('bags', 'Those bags are not in the stock book any more. Nothing was changed.');
      const { quantity, ...bags } = lot;
      await moveInStock(tx, { material: id, kind: 'spoiled', at: context.now, quantity: -quantity, ...bags });
      return done({ name: material.name });
    },
  );
