import type { Tx } from '../../db/open.ts';
import { addOrder, updateOrder } from '../../db/stores/order-store.ts';
import { moveInStock } from '../../db/stores/stock-store.ts';
import { addWorkRecords } from '../../db/stores/work-record-store.ts';
import { dateOfDay, dayNumber } from '../../shared/time.ts';
import type { WorkRecord } from '../../shared/work-record.ts';

const MOULDS = ['900 no. 1', '900 no. 2'];
const DAYS = 7;

/** One Saturday of the small yard: both moulds filled at 9, and stripped at 11 in eight minutes, some of it scrap. */
const saturday = (date: string, n: number): WorkRecord[] => {
  const filledAt = `${date}T08:00:00Z`;
  const pours = MOULDS.map((mould) => ({ mould, casting: 'panel-900', filledAt }));
  return [
    { kind: 'poured', at: filledAt, mix: 'thin', bags: 1, pours },
    ...MOULDS.map((mould, m): WorkRecord => {
      const isScrap = n % 4 === 0 && m === 1;
      const [from, to] = [`${date}T10:0${m}:00Z`, `${date}T10:1${m}:00Z`];
      return {
        ...{ kind: 'stripped', at: to, mould, casting: 'panel-900', filledAt, workedFrom: from, tappedAt: to },
        ...(isScrap ? { cameOut: 'scrap', reason: 'corner off' } : { cameOut: 'good' }),
      };
    }),
  ];
};

/**
 * A made-up season of the small yard (`smallYard`) in a database that holds it: so many Saturdays before a date, a bag for each
 * and half a bag that a count found missing, and three orders that went out, one of them a week late.
 */
export const putSeason = async (tx: Tx, lastSaturday: string, weeks: number): Promise<void> => {
  const dates = Array.from({ length: weeks }, (_, n) => dateOfDay(dayNumber(lastSaturday) - n * DAYS));
  await addWorkRecords(tx, dates.flatMap(saturday));
  for (const date of dates) {
    const at = `${date}T08:00:00Z`;
    const work = { mix: 'thin', mould: MOULDS[0]!, at };
    await moveInStock(tx, { at, material: 'mortar', kind: 'received', quantity: 1 });
    await moveInStock(tx, { at, material: 'mortar', kind: 'used', quantity: -1, work });
  }
  await moveInStock(tx, { at: `${lastSaturday}T12:00:00Z`, material: 'mortar', kind: 'counted', quantity: -0.5 });
  for (const [n, late] of [0, 0, DAYS].entries()) {
    const id = `${lastSaturday.slice(2, 4)}-10${n}`;
    const promisedOn = dateOfDay(dayNumber(lastSaturday) - late);
    const blank = { wantedOn: null, notBefore: null, heldUntil: null, note: null, address: null };
    const said = { id, promisedOn, takenAt: null, weight: 1, customerId: null };
    await addOrder(tx, { ...blank, ...said, lines: [{ kit: 'pair', quantity: 1 }] });
    await updateOrder(tx, id, { status: 'handed over', handedOverOn: lastSaturday });
  }
};
