import type { YardFile, YardFileInput } from '../../shared/yard-file.ts';
import { readYardFile } from '../../shared/yard-file.ts';

/** Saturdays 08:00 to 12:00 in Dublin, two moulds of one length, a kit of two panels; Saturday 10 April 2027 comes next. */
const input: YardFileInput = {
  format: 'mould-rota/yard',
  version: 1,
  yard: {
    name: 'Small yard',
    timeZone: 'Europe/Dublin',
    now: '2027-04-08T09:00:00+01:00',
    horizonDays: 60,
    handoverDays: ['SA'],
  },
  work: [{ rule: 'FREQ=WEEKLY;BYDAY=SA', from: '2027-01-02', start: '08:00', end: '12:00' }],
  closed: [],
  extra: [],
  temperatures: [],
  materials: [
    { id: 'mortar', name: 'Fast-setting mortar', unit: 'bag', onHand: 20 },
    { id: 'rod', name: 'Rod 12 mm', unit: 'stick', onHand: 3, stickMm: 3000, leadDays: 3, kerfMm: 3 },
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
      demouldMinutes: 75,
      cureHours: 0,
      perBag: [{ material: 'mortar', quantity: 1 }],
    },
  ],
  castings: [
    {
      id: 'panel-900',
      name: 'Panel 900',
      mix: 'thin',
      kg: 13.6,
      fillMinutes: 7,
      stripMinutes: 8,
      cleanMinutes: 6,
      prepMinutes: 12,
      perPiece: [],
      cuts: [],
    },
  ],
  moulds: [
    { id: '900 no. 1', makes: [{ casting: 'panel-900' }], setFor: 'panel-900', condition: 'ready' },
    { id: '900 no. 2', makes: [{ casting: 'panel-900' }], setFor: 'panel-900', condition: 'ready' },
  ],
  kits: [
    {
      id: 'pair',
      name: 'Pair of panels',
      pieces: [{ casting: 'panel-900', count: 2 }],
      parts: [],
      cuts: [{ material: 'rod', lengthMm: 300, count: 2 }],
      packMinutes: 5,
    },
  ],
  finished: [],
  inMould: [],
  orders: [{ id: '27-001', customer: 'School garden', due: '2027-04-10', lines: [{ kit: 'pair', quantity: 1 }] }],
};

export const smallYard = (changes: Partial<YardFileInput> = {}): YardFile => {
  const read = readYardFile({ ...input, ...changes });
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return read.yard;
};
