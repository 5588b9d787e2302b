import type { Order } from '../../shared/order.ts';
import type { YardFile } from '../../shared/yard-file.ts';
import { soonestComplete } from '../../src/engine/bound/soonest.ts';
import { NEVER } from '../../src/engine/decoder/problem.ts';
import { completesIfFirst } from '../../src/engine/quote/if-first.ts';
import { askingFor } from '../../src/engine/quote/present.ts';
import { handoverOn } from '../../src/engine/quote/promise.ts';
import { withMaterials, withRackSpace, withWindow } from '../support/one-more.ts';
import { randomYard, YARD_KINDS } from '../support/random-yard.ts';
import type { Row } from './table.ts';

const MOULDS_DOUBLED = 4;
const HOURS = [
  ['06:00', '09:00'],
  ['18:00', '21:00'],
  ['09:00', '16:00'],
] as const;

/** The day an order is ready when it goes before all others, and whether no plan can be sooner. */
const asked = (yard: YardFile, order: Order): { day: number; isProven: boolean } => {
  const asking = askingFor(yard, order);
  const { problem, added } = asking;
  const dayOf = (minute: number) => (minute >= problem.horizonEnd ? NEVER : handoverOn(problem, minute));
  const day = dayOf(completesIfFirst(order, asking));
  return { day, isProven: day === dayOf(soonestComplete(problem, added)) };
};

/** The yard with one more mould, window, one more of everything or rack space, each by itself. */
const withOneMore = (yard: YardFile, seed: number): YardFile[] => [
  ...yard.moulds.slice(0, MOULDS_DOUBLED).map((mould): YardFile => {
    const { repairedOn: _repairedOn, ...more } = mould;
    const ready = { ...more, id: `${mould.id} again`, condition: 'ready' as const, prepped: false, turnsSinceOil: 0 };
    return { ...yard, moulds: [...yard.moulds, ready] };
  }),
  ...HOURS.map(([start, end]) => withWindow(yard, seed, start, end)),
  withMaterials(yard),
  ...withRackSpace(yard),
];

/** How often one more of something makes "first before all others" later, on so many random yards, and how often it is proven. */
export const ifFirstRows = (yards: number): Row[] => {
  let [orders, proven, trials, later] = [0, 0, 0, 0];
  for (let seed = 0; seed < yards; seed++) {
    const yard = randomYard(seed, YARD_KINDS[seed % YARD_KINDS.length]!);
    const kit = yard.kits[seed % yard.kits.length]?.id;
    if (!kit) continue;
    const order: Order = { id: 'asked', weight: 1, lines: [{ kit, quantity: 1 + (seed % 3) }] };
    const before = asked(yard, order);
    orders++;
    if (before.isProven) proven++;
    for (const more of withOneMore(yard, seed)) {
      trials++;
      if (asked(more, order).day > before.day) later++;
    }
  }
  return [
    { what: `orders on random yards proven to be no sooner, of ${orders}`, figure: `${proven}`, aim: '' },
    { what: `later by one more mould, window, bag or rack space, of ${trials}`, figure: `${later}`, aim: 'none' },
  ];
};
