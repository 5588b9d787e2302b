import type { PlanFile } from '../../shared/plan.ts';
import { readYardFile, type YardFile, type YardFileInput } from '../../shared/yard-file.ts';

/**
 * A yard small enough to plan by hand. Thursday 8 April 2027, 09:00 in Dublin (one hour ahead of UTC). One person works on
 * Saturday 10 April 08:00 to 13:00 and on Wednesday 14 April 18:00 to 20:00; tasks from 08:10 to 12:45 and from 18:10 to
 * 19:45. It is 20 °C, so age at reference is time. Orders: a pair of panels with four pins, and one panel.
 */
const input: YardFileInput = {
  format: 'mould-rota/yard',
  version: 2,
  yard: {
    name: 'Hand-made',
    timeZone: 'Europe/Dublin',
    now: '2027-04-08T09:00:00+01:00',
    horizonDays: 30,
    rackSpaces: 2,
    setUpMinutes: 10,
    clearUpMinutes: 15,
    handoverDays: ['SA'],
  },
  work: [],
  closed: [],
  extra: [
    { date: '2027-04-10', start: '08:00', end: '13:00' },
    { date: '2027-04-14', start: '18:00', end: '20:00' },
  ],
  temperatures: [{ from: '2027-04-01', celsius: 20 }],
  materials: [
    { id: 'mortar', name: 'Fast-setting mortar', unit: 'bag', onHand: 0, leadDays: 1 },
    { id: 'mesh', name: 'Mesh', unit: 'm2', onHand: 5, leadDays: 5 },
    { id: 'pipe', name: 'Sleeve pipe', unit: 'stick', onHand: 1, stickMm: 3000, kerfMm: 2 },
    { id: 'rod', name: 'Pin rod', unit: 'stick', onHand: 1, stickMm: 3000, kerfMm: 3 },
  ],
  incoming: [],
  mixes: [
    {
      id: 'thin',
      name: 'Thin panel mix',
      yieldKgPerBag: 27.5,
      maxBags: 1,
      mixMinutes: 10,
      workingMinutes: 20,
      washMinutes: 5,
      attendMinutes: 60,
      demouldMinutes: 75,
      cureHours: 24,
      minCelsius: 5,
      protectHours: 24,
      perBag: [{ material: 'mortar', quantity: 1 }],
    },
  ],
  castings: [
    {
      id: 'panel',
      name: 'Panel 914',
      mix: 'thin',
      kg: 13.6,
      fillMinutes: 7,
      stripMinutes: 8,
      cleanMinutes: 6,
      prepMinutes: 12,
      perPiece: [{ material: 'mesh', quantity: 0.15 }],
      cuts: [{ material: 'pipe', lengthMm: 190, count: 2 }],
    },
  ],
  moulds: [
    { id: 'A', makes: [{ casting: 'panel' }], setFor: 'panel', condition: 'ready', prepped: true },
    {
      id: 'B',
      makes: [{ casting: 'panel' }],
      setFor: 'panel',
      condition: 'dirty',
      turnsSinceOil: 3,
      oilEveryTurns: 3,
      oilMinutes: 10,
      oilDryMinutes: 30,
    },
    { id: 'C', makes: [{ casting: 'panel' }], setFor: 'panel', condition: 'ready' },
  ],
  kits: [
    {
      id: 'pair',
      name: 'Pair of panels',
      pieces: [{ casting: 'panel', count: 2 }],
      parts: [],
      cuts: [{ material: 'rod', lengthMm: 300, count: 4 }],
      packMinutes: 5,
    },
  ],
  finished: [{ casting: 'panel', count: 1, order: '27-002' }],
  inMould: [{ mould: 'C', casting: 'panel', filledAt: '2027-04-07T10:00:00+01:00' }],
  orders: [
    { id: '27-001', due: '2027-04-17', lines: [{ kit: 'pair', quantity: 1 }] },
    { id: '27-002', weight: 2, lines: [{ casting: 'panel', quantity: 1 }] },
  ],
};

export const handMadeYard = (change: (input: YardFileInput) => void = () => {}): YardFile => {
  const copy = structuredClone(input);
  change(copy);
  const read = readYardFile(copy);
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return read.yard;
};

const april = (day: number, clock: string) => `2027-04-${String(day).padStart(2, '0')}T${clock}:00+01:00`;
const saturday = (clock: string) => april(10, clock);

/**
 * Its plan, worked out by hand, minute by minute:
 * 08:10 mould B: clean 6, sealing coat 10, so to 08:26; the coat dries for 30 minutes, to 08:56.
 * 08:38 mould C is stripped, 8 minutes; its piece was poured three days ago, so it is ready at once, and for stock.
 * 08:56 mould B is set up, 12 minutes, to 09:08.
 * 09:08 the batch: 10 minutes of mixing, A filled 09:18 to 09:25, B to 09:32, washed out by 09:37. 27.2 kg: one bag of
 *       27.5 kg. Filled over 14 of 20 minutes. Kept wet to 10:32. A is prepped: its prep takes no time.
 * 10:40 A can be stripped 75 minutes after 09:25; B after 09:32, so at 10:47, but there is one person: 10:48.
 * Both cure for 24 hours, to Sunday 09:25 and 09:32, and take the two spaces of the rack.
 * Wednesday 18:10 packing, 5 minutes; handed over on Saturday 17 April, 9 days from today. The other order is there now,
 * and goes out on Saturday 10 April, 2 days from today, with weight 2: 9 + 4 = 13.
 * One bag is bought for Saturday, a day ahead. Four sleeves of 190 from one pipe, four pins of 300 from one rod.
 */
export const handMadePlan = (): PlanFile => ({
  format: 'mould-rota/plan',
  version: 2,
  batches: [
    {
      id: 'B1',
      mix: 'thin',
      start: saturday('09:08'),
      mixEnd: saturday('09:18'),
      end: saturday('09:37'),
      bags: 1,
      kg: 27.2,
      pours: ['P1', 'P2'],
    },
  ],
  pours: [
    {
      id: 'P1',
      batch: 'B1',
      mould: 'A',
      casting: 'panel',
      order: '27-001',
      prepStart: saturday('09:08'),
      prepEnd: saturday('09:08'),
      fillStart: saturday('09:18'),
      fillEnd: saturday('09:25'),
      stripStart: saturday('10:40'),
      stripEnd: saturday('10:48'),
      pieceReadyAt: april(11, '09:25'),
    },
    {
      id: 'P2',
      batch: 'B1',
      mould: 'B',
      casting: 'panel',
      order: '27-001',
      prepStart: saturday('08:56'),
      prepEnd: saturday('09:08'),
      fillStart: saturday('09:25'),
      fillEnd: saturday('09:32'),
      stripStart: saturday('10:48'),
      stripEnd: saturday('10:56'),
      pieceReadyAt: april(11, '09:32'),
    },
  ],
  coats: [{ mould: 'B', start: saturday('08:10'), end: saturday('08:26') }],
  strips: [{ mould: 'C', stripStart: saturday('08:38'), stripEnd: saturday('08:46'), pieceReadyAt: saturday('08:46') }],
  unstripped: [],
  orders: [
    {
      id: '27-001',
      packStart: april(14, '18:10'),
      packEnd: april(14, '18:15'),
      completesAt: april(14, '18:15'),
      completesOn: '2027-04-17',
      daysLate: 0,
      fromFinished: [],
    },
    {
      id: '27-002',
      completesAt: april(8, '09:00'),
      completesOn: '2027-04-10',
      daysLate: 0,
      fromFinished: [{ finished: 0, count: 1 }],
    },
  ],
  unplanned: [],
  sticks: [
    { material: 'pipe', openedAt: saturday('09:08'), cuts: [{ lengthMm: 190, count: 4, for: 'B1' }] },
    { material: 'rod', openedAt: april(14, '18:10'), cuts: [{ lengthMm: 300, count: 4, for: '27-001' }] },
  ],
  buys: [{ material: 'mortar', quantity: 1, orderBy: '2027-04-09', arrivesOn: '2027-04-10' }],
  dropped: [],
  score: {
    unplannedWeight: 0,
    weightedDaysLate: 0,
    weightedDaysAfterWanted: 0,
    batches: 1,
    bags: 1,
    weightedCompletionDays: 13,
  },
});
