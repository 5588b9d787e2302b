import type { OrderStatus } from '../../shared/archived-order.ts';
import type { OrderLine, Slip } from '../../shared/order.ts';
import { dayNumber } from '../../shared/time.ts';
import type { DemoDates } from './larch-row-dates.ts';

export interface DemoOrder {
  customer: string;
  phone?: string;
  customerNote?: string;
  takenDaysAgo: number;
  wantedOn?: string;
  notBefore?: string;
  promisedOn?: string;
  heldUntil?: string;
  slip: Slip;
  note?: string;
  address?: string;
  status?: OrderStatus;
  handedOverOn?: string;
  lines: OrderLine[];
  /** Pieces in the yard that are set aside for it. */
  setAside?: { casting: string; count: number }[];
  /** Moulds that hold a piece for it. */
  inMoulds?: { mould: string; casting: string }[];
}

const kit = (id: string, quantity: number): OrderLine => ({ kit: id, quantity });
const single = (casting: string, quantity: number): OrderLine => ({ casting, quantity });

/** Orders at every stage, in the order in which they were taken. Phone numbers are of the range kept free for fiction. */
export const larchRowOrders = ({ day, next, last }: DemoDates): DemoOrder[] => [
  {
    ...{ customer: 'Tom Keane', phone: '020 910 0117', takenDaysAgo: 44, slip: 'yes', lines: [kit('trough', 2)] },
    ...{ promisedOn: last('SA'), status: 'handed over', handedOverOn: last('SA') },
  },
  {
    ...{
      customer: 'School garden',
      phone: '020 910 0142',
      customerNote: 'Gate is locked until 8.45.',
      takenDaysAgo: 31,
    },
    ...{ wantedOn: next('SA', 26), promisedOn: next('SA', 26), slip: 'not', lines: [kit('planter', 2)] },
    note: 'Opening day is the Monday after.',
    address: 'The school, Church Lane, by the back gate',
    setAside: [{ casting: 'panel-600', count: 3 }],
    inMoulds: [{ mould: '1200 no. 1', casting: 'panel-1200' }],
  },
  {
    ...{ customer: 'Nuala Byrne', phone: '020 910 0168', takenDaysAgo: 24, promisedOn: last('SA'), slip: 'rather not' },
    ...{ lines: [kit('trough', 1)], note: 'Knows that it is late; wants a call.' },
    setAside: [{ casting: 'panel-450', count: 2 }],
  },
  {
    ...{ customer: 'Declan Roche', takenDaysAgo: 20, wantedOn: next('SA', 20), slip: 'yes', status: 'cancelled' },
    lines: [kit('herb-square', 1)],
  },
  {
    ...{ customer: 'Terrace wall, Quinn', phone: '020 910 0193', takenDaysAgo: 17, slip: 'yes' },
    ...{ wantedOn: next('SA', 60), promisedOn: next('SA', 67), lines: [kit('coping-set', 2), kit('trough', 1)] },
    inMoulds: [{ mould: 'Coping no. 1', casting: 'coping-600' }],
  },
  {
    ...{ customer: 'Allotments, plot 12', phone: '020 910 0121', takenDaysAgo: 12, slip: 'rather not' },
    ...{ wantedOn: next('SA', 7), promisedOn: next('SA', 7), lines: [kit('cold-frame', 1)] },
    setAside: [
      { casting: 'panel-900', count: 1 },
      { casting: 'panel-600', count: 1 },
    ],
  },
  {
    ...{ customer: 'Farm shop', phone: '020 910 0155', takenDaysAgo: 8, slip: 'rather not' },
    ...{ wantedOn: next('SA', 2), promisedOn: next('SA', 2), note: 'Parts only, to sell on.' },
    lines: [{ material: 'corner-clip', quantity: 16 }],
  },
  {
    ...{ customer: 'Allotments, plot 30', takenDaysAgo: 6, wantedOn: next('SA', 50), slip: 'yes' },
    lines: [kit('cold-frame', 2), kit('herb-square', 1)],
  },
  {
    ...{
      customer: 'Ann Moran',
      phone: '020 910 0136',
      takenDaysAgo: 1,
      promisedOn: next('SA', 33),
      slip: 'rather not',
    },
    ...{ wantedOn: next('SA', 33), heldUntil: day(4), lines: [kit('planter', 1)], note: 'Asking her sister first.' },
  },
  {
    ...{ customer: 'Pat Dunne', phone: '020 910 0174', takenDaysAgo: 0, slip: 'yes' },
    ...{ lines: [single('panel-600', 2), single('panel-450', 1)], note: 'No hurry, will call in.' },
  },
];

/** An order's number: its year, and how many there were in that year. The yard takes about one in six days. */
export const orderNumbers = (orders: readonly DemoOrder[], { day }: DemoDates): string[] => {
  const counts = new Map<string, number>();
  return orders.map(({ takenDaysAgo }) => {
    const taken = day(-takenDaysAgo);
    const year = taken.slice(2, 4);
    const before = counts.get(year) ?? Math.floor((dayNumber(taken) - dayNumber(`${taken.slice(0, 4)}-01-01`)) / 6);
    counts.set(year, before + 1);
    return `${year}-${String(before + 1).padStart(3, '0')}`;
  });
};
