import type { PlanFile } from '../../shared/plan.ts';
import type { YardFile, YardFileInput } from '../../shared/yard-file.ts';
import { smallYard } from './small-yard.ts';

/** Saturday 10 April 2027 in Dublin, one hour ahead of UTC. */
export const saturday = (clock: string): string => `2027-04-10T${clock}:00+01:00`;

/**
 * The small yard with setting up and clearing up (tasks from 8:10 to 11:45 on Saturdays), mesh in its panels, and a
 * sealing coat on the second mould. There is no weather, so age is time: a panel is stripped 75 minutes after it is full.
 */
export const plannedYard = (changes: Partial<YardFileInput> = {}): YardFile => {
  const base = smallYard();
  return smallYard({
    yard: { ...base.yard, setUpMinutes: 10, clearUpMinutes: 15 },
    materials: [
      {
        id: 'mortar',
        name: 'Fast-setting mortar',
        unit: 'bag',
        onHand: 3,
        minimum: 2,
        leadDays: 3,
        unitPrice: 20,
        supplier: 'Merchant',
      },
      { id: 'mesh', name: 'Mesh', unit: 'm2', onHand: 4 },
      { id: 'rod', name: 'Rod 12 mm', unit: 'stick', onHand: 3, stickMm: 3000, kerfMm: 3, leadDays: 3 },
    ],
    castings: base.castings.map((casting) => ({ ...casting, perPiece: [{ material: 'mesh', quantity: 0.16 }] })),
    moulds: base.moulds.map((mould, index) =>
      index === 1
        ? { ...mould, condition: 'dirty', oilEveryTurns: 8, turnsSinceOil: 8, oilMinutes: 5, oilDryMinutes: 20 }
        : mould,
    ),
    finished: [{ casting: 'panel-900', count: 1 }],
    ...changes,
  });
};

/**
 * A plan made by hand. 8:10 set up no. 1 (12 min), 8:22 clean and coat no. 2 (6 and 5), dry to 8:53, set it up (12), mix
 * from 9:05 (10), fill 9:15 to 9:22 and 9:22 to 9:29; strip from 10:37 and 10:44, 8 minutes each; pack 10:52 to 10:57. The order takes the
 * panel of no. 1 and the finished one, the panel of no. 2 is for stock.
 */
export const handPlan = (): PlanFile => ({
  format: 'mould-rota/plan',
  version: 2,
  batches: [
    {
      id: 'B1',
      mix: 'thin',
      start: saturday('09:05'),
      mixEnd: saturday('09:15'),
      end: saturday('09:29'),
      bags: 1,
      kg: 27.2,
      pours: ['P1', 'P2'],
    },
  ],
  pours: [
    {
      ...{ id: 'P1', batch: 'B1', mould: '900 no. 1', casting: 'panel-900', order: '27-001' },
      ...{
        prepStart: saturday('08:10'),
        prepEnd: saturday('08:22'),
        fillStart: saturday('09:15'),
        fillEnd: saturday('09:22'),
      },
      ...{ stripStart: saturday('10:37'), stripEnd: saturday('10:45'), pieceReadyAt: saturday('10:45') },
    },
    {
      ...{ id: 'P2', batch: 'B1', mould: '900 no. 2', casting: 'panel-900' },
      ...{
        prepStart: saturday('08:53'),
        prepEnd: saturday('09:05'),
        fillStart: saturday('09:22'),
        fillEnd: saturday('09:29'),
      },
      ...{ stripStart: saturday('10:44'), stripEnd: saturday('10:52'), pieceReadyAt: saturday('10:52') },
    },
  ],
  coats: [{ mould: '900 no. 2', start: saturday('08:22'), end: saturday('08:33') }],
  strips: [],
  unstripped: [],
  orders: [
    {
      ...{ id: '27-001', packStart: saturday('10:52'), packEnd: saturday('10:57'), completesAt: saturday('10:57') },
      ...{ completesOn: '2027-04-10', daysLate: 0, fromFinished: [{ finished: 0, count: 1 }] },
    },
  ],
  unplanned: [],
  sticks: [{ material: 'rod', openedAt: saturday('10:52'), cuts: [{ lengthMm: 300, count: 2, for: '27-001' }] }],
  buys: [{ material: 'mortar', quantity: 2, orderBy: '2027-04-08', arrivesOn: '2027-04-11' }],
  dropped: [],
  score: {
    unplannedWeight: 0,
    weightedDaysLate: 0,
    weightedDaysAfterWanted: 0,
    batches: 1,
    bags: 1,
    weightedCompletionDays: 2,
  },
});
