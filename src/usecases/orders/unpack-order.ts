import { forgetSteps } from '../../../db/stores/recorded-step-store.ts';
import { addWorkRecords, workRecords } from '../../../db/stores/work-record-store.ts';
import { unpack } from '../../engine/book/pack.ts';
import { piecesPacked } from '../../engine/book/pieces-taken.ts';
import { done, type Outcome, refuse, type UseCaseContext } from '../core/context.ts';
import { type Changed, changing } from '../plan/changing.ts';
import { anyPackingName } from '../plan/late-steps.ts';
import { writeBooked } from '../plan/recording-work.ts';
import { hasLeftStock, openOrder, orderName } from './open-order.ts';
import { packStep } from './pack-order.ts';

/** An order that is packed, all of it or some, comes apart again: its pieces are set aside for it, its parts and lengths are in stock. */
export const unpackOrder = (context: UseCaseContext, id: string): Promise<Outcome<Changed<{ name: string }>>> =>
  changing(context, { kind: 'unpacked', words: ({ name }) => `Unpacked for ${name}` }, async (tx, yard) => {
    const found = await openOrder(tx, id);
    if (!found.ok) return found;
    if (!hasLeftStock(found.value)) return refuse('order', `Order ${id} is not packed. Nothing was changed.`);
    const marked = piecesPacked(await workRecords(tx), id);
    const written = await writeBooked(tx, unpack(yard, { order: id, lines: found.value.lines }, marked));
    if (!written.ok) return written;
    await addWorkRecords(tx, [{ kind: 'unpacked', at: yard.yard.now, order: id }], context.by);
    await forgetSteps(tx, [packStep(id), anyPackingName(id)]);
    return done({ name: orderName(found.value) });
  });
