import { addPayment, setCostOfMould, setCostsOfYard, setKitPrice, setMoneyOfOrder } from '../stores/money-store.ts';
import type { Tx } from '../transaction.ts';
import type { DemoDates } from './larch-row-dates.ts';

/** What the yard of the demo reckons by, what it asks, and who has paid what. */
export const seedMoney = async (tx: Tx, { day, last }: DemoDates, numberOf: (customer: string) => string) => {
  await setCostsOfYard(tx, {
    ...{ wageHour: 16, sessionFixed: 6, rejectPercent: 3, marginPercent: 35, holdingPercent: 20 },
    ...{ mouldCost: 48, mouldTurns: 120 },
  });
  await setCostOfMould(tx, { id: '1200 no. 3', cost: 66, costTurns: 120 });
  await setKitPrice(tx, 'planter', 440);
  const payment = { back: false, note: null };
  const school = numberOf('School garden');
  await setMoneyOfOrder(tx, school, {
    ...{ price: 880, deposit: 260 },
    quote: {
      ...{ at: `${day(-31)}T09:30:00Z`, currency: 'EUR', price: 860, deposit: 260 },
      lines: [{ name: 'Planter 1200 x 600, two courses', quantity: 2, unit: '', price: 860 }],
    },
  });
  await addPayment(tx, school, { ...payment, on: day(-29), amount: 260, note: 'Bank' });
  await setMoneyOfOrder(tx, numberOf('Nuala Byrne'), { price: 175, deposit: 50 });
  await addPayment(tx, numberOf('Nuala Byrne'), { ...payment, on: day(-24), amount: 50 });
  await setMoneyOfOrder(tx, numberOf('Tom Keane'), { price: 350 });
  await addPayment(tx, numberOf('Tom Keane'), { ...payment, on: last('SA'), amount: 200, note: 'Cash' });
};
