import { SLIP_WEIGHTS } from '../../shared/order.ts';
import { customerNamed } from '../stores/customer-store.ts';
import { addFinished } from '../stores/finished-store.ts';
import { setDemo } from '../stores/habits-store.ts';
import { addIncoming, markArrived, updateMaterial } from '../stores/material-store.ts';
import { setMixWater } from '../stores/mix-water-store.ts';
import { fillMould, updateMould } from '../stores/mould-store.ts';
import { addOrder, updateOrder } from '../stores/order-store.ts';
import { replaceYard } from '../stores/replace-yard.ts';
import { setOnHand } from '../stores/stock-store.ts';
import { bumpRevision } from '../stores/yard-store.ts';
import type { Tx } from '../transaction.ts';
import { type DemoDates, demoDates } from './larch-row-dates.ts';
import { seedMoney } from './larch-row-money.ts';
import { type DemoOrder, larchRowOrders, orderNumbers } from './larch-row-orders.ts';
import { seedSizes } from './larch-row-sizes.ts';
import { seedSuppliers } from './larch-row-suppliers.ts';
import { larchRowYard } from './larch-row-yard.ts';

/** A quarter past eleven in Dublin in winter, past twelve in summer: both inside the Saturday's hours. */
const lastPour = ({ last }: DemoDates): string => `${last('SA')}T11:15:00Z`;

const seedOrder = async (tx: Tx, dates: DemoDates, id: string, order: DemoOrder): Promise<void> => {
  const { wantedOn = null, notBefore = null, promisedOn = null, heldUntil = null, note = null, slip, lines } = order;
  const { address = null } = order;
  await addOrder(tx, {
    ...{ id, wantedOn, notBefore, promisedOn, heldUntil, note, address, lines, weight: SLIP_WEIGHTS[slip] },
    customerId: await customerNamed(tx, order.customer, order.phone, order.customerNote),
    takenAt: `${dates.day(-order.takenDaysAgo)}T07:10:00Z`,
  });
  if (order.status) await updateOrder(tx, id, { status: order.status, handedOverOn: order.handedOverOn ?? null });
  for (const pieces of order.setAside ?? []) await addFinished(tx, { ...pieces, readyAt: null, order: id });
  for (const piece of order.inMoulds ?? []) await fillMould(tx, { ...piece, filledAt: lastPour(dates), order: id });
};

const cameOn = (on: string) => ({ on, at: `${on}T09:30:00Z` });

const seedGoods = async (tx: Tx, dates: DemoDates): Promise<void> => {
  const { day, last } = dates;
  const goods = [
    { material: 'fast-setting-mortar', quantity: 6, on: day(2), boughtOn: day(-2), price: 129 },
    { material: 'plasticiser', quantity: 10, on: day(5), boughtOn: day(-3), price: 11 },
  ];
  for (const each of goods) await addIncoming(tx, each);
  const arrived = { material: 'mesh', quantity: 6, on: last('FR'), boughtOn: day(-9), price: 38.4 };
  await markArrived(tx, await addIncoming(tx, arrived), cameOn(last('FR')));
  // Some of it was used since: three are there, one for longer than it keeps.
  const concrete = { material: 'coping-concrete', on: day(-30), boughtOn: null, price: null };
  await markArrived(tx, await addIncoming(tx, { ...concrete, quantity: 4 }), cameOn(day(-133)));
  await markArrived(tx, await addIncoming(tx, { ...concrete, quantity: 2 }), cameOn(day(-30)));
  await setOnHand(tx, 'coping-concrete', 3, { kind: 'used', at: lastPour(dates) });
  await updateMaterial(tx, 'fast-setting-mortar', { openedNote: 'One bag opened, tied up and kept dry.' });
};

/** One 25 kg bag of fast-setting mortar takes 4.7 l (5 US quarts): facts of the trade, no source. Coping concrete takes less. */
const seedWater = async (tx: Tx): Promise<void> => {
  await setMixWater(tx, 'thin', 4.7);
  await setMixWater(tx, 'coping', 3);
};

const seedNotes = async (tx: Tx): Promise<void> => {
  await updateMould(tx, '900 no. 2', { damageNote: 'End board split at the sleeve; a new one is being cut.' });
  await updateMould(tx, '1200 no. 3', { note: 'Stop board for 900 hangs behind it.' });
};

/** Fills an empty database with Larch Row Yard as it might stand on `today`. */
export const seedDemo = async (tx: Tx, today: string, _now: string): Promise<void> => {
  const dates = demoDates(today);
  // The stock book begins before what has come since.
  await replaceYard(tx, larchRowYard(dates, `${dates.day(-140)}T09:00:00Z`));
  const orders = larchRowOrders(dates);
  const numbers = orderNumbers(orders, dates);
  for (const [index, order] of orders.entries()) await seedOrder(tx, dates, numbers[index] ?? '', order);
  await addFinished(tx, { casting: 'panel-600', count: 1, readyAt: null, order: null });
  await addFinished(tx, { casting: 'panel-900', count: 1, readyAt: null, order: null });
  await seedGoods(tx, dates);
  await seedNotes(tx);
  await seedWater(tx);
  await seedSuppliers(tx);
  await seedSizes(tx);
  const numberOf = (customer: string) => numbers[orders.findIndex((one) => one.customer === customer)] ?? '';
  await seedMoney(tx, dates, numberOf);
  await setDemo(tx, true);
  await bumpRevision(tx);
};
