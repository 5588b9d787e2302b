import type { Tx } from '../../../db/open.ts';
import { addIncoming, materialById } from '../../../db/stores/material-store.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { todayIn } from '../../engine/book/today-in.ts';
import { done, type Outcome, refuse, type UseCaseContext } from '../core/context.ts';
import { onDayWords } from '../core/day-words.ts';
import { type Changed, changing } from '../plan/changing.ts';
import { lastDay } from '../typed/last-day.ts';
import { measuresOf } from '../typed/measures.ts';
import { purchaseRead } from '../typed/purchase-form.ts';
import type { TripTyped } from '../typed/trip-form.ts';

interface TripBought {
  name: string;
  things: number;
  day: string;
}

const bought = async (tx: Tx, { name, lines }: TripTyped, yard: YardFile): Promise<Outcome<TripBought>> => {
  const today = todayIn(yard);
  const measures = await measuresOf(tx);
  const days: string[] = [];
  for (const line of lines) {
    const material = await materialById(tx, line.material);
    if (!material) return refuse('trip', 'One of these things is not in the stock book any more. Nothing was changed.');
    const purchase = purchaseRead(line, material, measures, { today, last: lastDay(yard) });
    if (!purchase.ok) return refuse('trip', `${material.name}: ${purchase.faults[0]?.message ?? ''}`);
    await addIncoming(tx, { material: material.id, ...purchase.value, boughtOn: today });
    days.push(purchase.value.on);
  }
  const last = days.sort().at(-1);
  if (last === undefined) return refuse('trip', 'Nothing is left to buy there. Nothing was changed.');
  return done({ name, things: lines.length, day: onDayWords(last, today) });
};

/** All of a trip is bought, each thing as the page had it, and on its way until it arrives. */
export const buyTrip = (context: UseCaseContext, typed: TripTyped): Promise<Outcome<Changed<TripBought>>> =>
  changing(
    context,
    {
      kind: 'bought',
      words: ({ name, things, day }) =>
        `${things === 1 ? 'One thing' : `${things} things`} bought: ${name}, the last expected ${day}`,
    },
    (tx, yard) => bought(tx, typed, yard),
  );
