import type { Tx } from '../../../db/open.ts';
import { setTyped } from '../../../db/stores/figure-store.ts';
import { habitsOfYard } from '../../../db/stores/habits-store.ts';
import {
  addIncoming,
  incomingById,
  markArrived,
  materialById,
  type StoredIncoming,
  type StoredMaterial,
  setPricePaid,
} from '../../../db/stores/material-store.ts';
import { LARGEST } from '../../../shared/number.ts';
import { fromMinor, toMinor } from '../../engine/cost/minor-units.ts';
import { shareOut } from '../../engine/cost/share-out.ts';
import { done, type Outcome, refuse, today, type UseCaseContext } from '../core/context.ts';
import { type Changed, changing } from '../plan/changing.ts';
import { amountTyped, TOO_MUCH } from '../typed/amount-typed.ts';
import { type DateReading, lastSuch, readDate } from '../typed/date-typed.ts';
import { measuresOf } from '../typed/measures.ts';
import { type CameTyped, priceRead, shareOfStick } from '../typed/purchase-form.ts';
import { keepsUntil } from './bags-facts.ts';
import { incomingFigure } from './buy-material.ts';

const ARRIVED_ALREADY = 'That has arrived already, or is no longer on its way. Nothing was changed.';

/** So many times as much as was bought is likelier a slip of the finger than a delivery: it is asked about. */
const ASKED_FROM_TIMES = 10;

const askedFirst = (goods: StoredIncoming, came: number, { text, sure }: CameTyped): string | null =>
  came < ASKED_FROM_TIMES * goods.quantity || sure === text
    ? null
    : `That is ${Math.floor(came / goods.quantity).toLocaleString('en')} times what was bought. If so much came, press Arrived once more.`;

/** What was paid for what came, and for what is still to come; null where nobody said. */
interface PriceParts {
  came: number | null;
  rest: number | null;
}

/** What was paid for all of it, shared by what came and what is still to come; what came costs what is typed for it. */
const priceParts = (
  { price, quantity }: StoredIncoming,
  came: number,
  typed: number | null | undefined,
  currency: string,
) => {
  const left = Math.max(0, quantity - came);
  const shared = price === null ? [] : shareOut(toMinor(price, currency), left > 0 ? [came, left] : [1]);
  const [own = null, rest = null] = shared.map((part) => fromMinor(part, currency));
  return { came: typed === undefined ? own : typed, rest } satisfies PriceParts;
};

/** Fewer came than were bought: the rest is on its way still. */
const keepRestComing = async (tx: Tx, goods: StoredIncoming, came: number, price: number | null, day: string) => {
  const { material, quantity, on, firstOn, boughtOn } = goods;
  if (came >= quantity) return;
  const rest = { material, quantity: quantity - came, boughtOn, price };
  // Today or before, and not here: it comes later than was said.
  const said = on < day ? { on: day, firstOn: firstOn ?? on } : { on, firstOn };
  await addIncoming(tx, { ...rest, ...said });
};

const PACKED = /^\s*packed\s+(?:on\s+)?(.+)$/i;

/** Bags that say when they were packed are used as long after that as the material keeps. Without a year it is the last such day. */
const packedDate = (text: string, { shelfLifeDays }: StoredMaterial, how: DateReading): Outcome<string | null> => {
  const read = readDate(text, how);
  if (!read.ok) return refuse('useBy', read.reason);
  const packedOn = lastSuch(read.date, text, how.today);
  if (packedOn > how.today) return refuse('useBy', 'That day is still to come.');
  if (shelfLifeDays === null)
    return refuse('useBy', 'Nobody said how long it keeps. Write the day it is best before, or say so under Stock.');
  return done(keepsUntil(shelfLifeDays, packedOn));
};

/** The date on the bags, best before or packed: as it was typed, none where the field was emptied, and as long as it keeps where nobody was asked. */
const bagDateOf = (
  typed: string | undefined,
  material: StoredMaterial | null,
  how: DateReading,
): Outcome<string | null> => {
  if (!material || material.stickMm !== null || material.inSheets || typed === '') return done(null);
  if (typed === undefined) return done(keepsUntil(material.shelfLifeDays, how.today));
  const packed = PACKED.exec(typed)?.[1];
  if (packed !== undefined) return packedDate(packed, material, how);
  const read = readDate(typed, how);
  return read.ok ? done(read.date) : refuse('useBy', read.reason);
};

const receive = async (
  tx: Tx,
  id: number,
  typed: CameTyped,
  { day, now }: { day: string; now: string },
): Promise<Outcome<{ name: string }>> => {
  const goods = await incomingById(tx, id);
  if (!goods || goods.arrivedOn !== null) return refuse('goods', ARRIVED_ALREADY);
  const material = await materialById(tx, goods.material);
  const { system, english } = await measuresOf(tx);
  const came = amountTyped(typed, material?.unit ?? '', system);
  if (!came.ok) return refuse('came', came.reason);
  if (came.value !== null && came.value <= 0) return refuse('came', 'How much came? Write a number above 0.');
  const share =
    material && came.value !== null && came.value !== goods.quantity ? shareOfStick(material, came.value) : null;
  if (share !== null) return refuse('came', share);
  const quantity = came.value ?? goods.quantity;
  if ((material?.onHand ?? 0) + quantity > LARGEST)
    return refuse('came', `With what is there already it ${TOO_MUCH.charAt(0).toLowerCase()}${TOO_MUCH.slice(1)}`);
  const asked = askedFirst(goods, quantity, typed);
  if (asked !== null) return refuse('came', asked);
  const useBy = bagDateOf(typed.useBy, material, { today: day, system, english });
  if (!useBy.ok) return useBy;
  const { currency } = await habitsOfYard(tx);
  const paid = typed.price === undefined ? done(undefined) : priceRead(typed.price, { currency });
  if (!paid.ok) return paid;
  const parts = priceParts(goods, quantity, paid.value, currency);
  await markArrived(tx, id, { on: day, at: now, came: quantity, useBy: useBy.value ?? undefined });
  await setTyped(tx, incomingFigure(goods.material, id), null);
  await setPricePaid(tx, id, parts.came);
  await keepRestComing(tx, goods, quantity, parts.rest, day);
  return done({ name: material?.name ?? goods.material });
};

/** Goods on their way have come: into stock. `came` is how much, where it is not what was bought. */
export const receiveMaterial = (
  context: UseCaseContext,
  id: number,
  came: CameTyped,
): Promise<Outcome<Changed<{ name: string }>>> =>
  changing(context, { kind: 'arrived', words: ({ name }) => `${name} arrived` }, (tx, yard) =>
    receive(tx, id, came, { day: today(yard.yard.timeZone, context.now), now: context.now }),
  );
