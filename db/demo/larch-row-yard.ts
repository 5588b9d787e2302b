import type { Casting } from '../../shared/casting.ts';
import type { Kit } from '../../shared/kit.ts';
import type { Material } from '../../shared/material.ts';
import type { Mix } from '../../shared/mix.ts';
import type { Mould } from '../../shared/mould.ts';
import { TASK_KINDS, type WorkWindow } from '../../shared/work.ts';
import type { YardFile } from '../../shared/yard-file.ts';
import type { DemoDates } from './larch-row-dates.ts';

const everything = [...TASK_KINDS];

const work = ({ last }: DemoDates): WorkWindow[] => [
  { rule: 'FREQ=WEEKLY;BYDAY=SA', from: last('SA'), start: '08:00', end: '13:30', crew: 1, allows: everything },
  // The helper, on Saturdays only.
  { rule: 'FREQ=WEEKLY;BYDAY=SA', from: last('SA'), start: '09:00', end: '12:30', crew: 1, allows: everything },
  { rule: 'FREQ=WEEKLY;BYDAY=WE', from: last('WE'), start: '18:00', end: '20:30', crew: 1, allows: everything },
  // A while after the day's other work: pieces can be stripped and packed then, nothing is mixed.
  { rule: 'FREQ=DAILY', from: last('SA'), start: '16:30', end: '17:15', crew: 1, allows: ['strip', 'pack'] },
];

/** Rough means of a mild, wet coast, January first. Common practice, no source. */
const MONTHLY_CELSIUS = [6, 6, 7, 9, 11, 14, 16, 16, 14, 11, 8, 6];

const temperatures = ({ today }: DemoDates) => {
  const [year = 0, month = 1] = today.split('-').map(Number);
  return Array.from({ length: 14 }, (_, later) => {
    const months = month - 1 + later;
    const from = `${year + Math.floor(months / 12)}-${String((months % 12) + 1).padStart(2, '0')}-01`;
    return { from, celsius: MONTHLY_CELSIUS[months % 12] ?? 10 };
  });
};

export const MERCHANT = "Builders' merchant";
export const MAIL_ORDER = 'Mail order';

const bought = { minimum: 0, kerfMm: 0 };
/** The mortar has its date on the bags, some of it a good deal sooner than the rest. */
const materials = ({ day }: DemoDates): Material[] => [
  {
    ...{
      id: 'fast-setting-mortar',
      name: 'Fast-setting mortar, 25 kg',
      unit: 'bag',
      onHand: 7,
      pack: 1,
      leadDays: 3,
      kerfMm: 0,
    },
    ...{ minimum: 2, unitPrice: 21.5, supplier: MERCHANT, shelfLifeDays: 270 },
    lots: [
      { quantity: 3, useBy: day(75) },
      { quantity: 4, useBy: day(190) },
    ],
  },
  {
    ...{ id: 'coping-concrete', name: 'Concrete mix, 25 kg', unit: 'bag', onHand: 3, pack: 1, leadDays: 2, ...bought },
    ...{ unitPrice: 7.2, supplier: MERCHANT, shelfLifeDays: 120 },
  },
  {
    ...{ id: 'plasticiser', name: 'Plasticiser', unit: 'sachet', onHand: 11, pack: 10, leadDays: 7, ...bought },
    ...{ unitPrice: 1.1, supplier: MAIL_ORDER },
  },
  {
    ...{ id: 'citric-acid', name: 'Citric acid', unit: 'g', onHand: 700, pack: 500, leadDays: 4, ...bought },
    ...{ unitPrice: 0.012, supplier: 'Grocer' },
  },
  {
    ...{ id: 'glass-fibre', name: 'Glass fibre, chopped', unit: 'g', onHand: 240, pack: 500, leadDays: 7, ...bought },
    ...{ unitPrice: 0.02, supplier: MAIL_ORDER },
  },
  {
    ...{ id: 'mesh', name: 'Galvanised mesh, 25 mm', unit: 'm2', onHand: 0.9, pack: 6, leadDays: 5, ...bought },
    ...{ unitPrice: 6.4, supplier: 'Farm shop', sheetWidthMm: 1000, sheetLengthMm: 6000, meshMm: 25 },
    rests: [{ widthMm: 1000, lengthMm: 900, count: 1 }],
  },
  {
    ...{
      id: 'sleeve-pipe',
      name: 'Sleeve pipe 20 mm, 3 m',
      unit: 'stick',
      onHand: 3,
      pack: 1,
      leadDays: 2,
      minimum: 0,
    },
    ...{ unitPrice: 4.8, supplier: MERCHANT, stickMm: 3000, kerfMm: 2 },
  },
  {
    ...{ id: 'pin-rod', name: 'Galvanised rod 12 mm, 3 m', unit: 'stick', onHand: 2, pack: 1, leadDays: 6, minimum: 0 },
    ...{ unitPrice: 11.9, supplier: 'Steel stockholder', stickMm: 3000, kerfMm: 3 },
  },
  {
    ...{
      id: 'corner-clip',
      name: 'Corner clip',
      unit: 'each',
      onHand: 30,
      pack: 25,
      leadDays: 7,
      minimum: 8,
      kerfMm: 0,
    },
    ...{ unitPrice: 0.85, supplier: MAIL_ORDER },
  },
];

/** One 25 kg bag takes a sachet, about 57 g of citric acid and 9.4 g of glass fibre (common practice, no source). */
const mixes: Mix[] = [
  {
    ...{ id: 'thin', name: 'Thin panel mix', yieldKgPerBag: 27.5, bagStep: 0.5, maxBags: 1, crew: 1, mixMinutes: 10 },
    ...{ workingMinutes: 20, washMinutes: 5, attendMinutes: 60, demouldMinutes: 75, cureHours: 72 },
    ...{ referenceCelsius: 20, activationKelvin: 5000, minCelsius: 5, maxCelsius: 32, protectHours: 0 },
    perBag: [
      { material: 'fast-setting-mortar', quantity: 1 },
      { material: 'plasticiser', quantity: 1 },
      { material: 'citric-acid', quantity: 57 },
      { material: 'glass-fibre', quantity: 9.4 },
    ],
  },
  {
    ...{ id: 'coping', name: 'Coping mix', yieldKgPerBag: 26.8, bagStep: 0.5, maxBags: 2, crew: 1, mixMinutes: 12 },
    ...{ workingMinutes: 45, washMinutes: 5, attendMinutes: 0, demouldMinutes: 1320, cureHours: 168 },
    ...{ referenceCelsius: 20, activationKelvin: 4700, minCelsius: 5, maxCelsius: 32, protectHours: 48 },
    perBag: [{ material: 'coping-concrete', quantity: 1 }],
  },
];

/** A thin panel is 200 mm high: 13.5 kg at 900 mm, the rest by its length. Two sleeves take the corner pins. */
const panel = (lengthMm: number, kg: number, fillMinutes: number, prepMinutes: number): Casting => ({
  ...{ id: `panel-${lengthMm}`, name: `Panel ${lengthMm}`, mix: 'thin', kg, fillMinutes, prepMinutes },
  ...{ stripMinutes: 8, stripCrew: 1, cleanMinutes: 6, rackSpaces: 1 },
  perPiece: [{ material: 'mesh', quantity: (lengthMm / 1000) * 0.18 }],
  sheets: [{ material: 'mesh', widthMm: 175, lengthMm: lengthMm - 25, count: 1, mayTurn: true }],
  cuts: [{ material: 'sleeve-pipe', lengthMm: 190, count: 2 }],
});

const castings: Casting[] = [
  panel(1200, 18, 8, 14),
  panel(900, 13.5, 7, 12),
  panel(600, 9, 5, 10),
  panel(450, 6.7, 4, 10),
  {
    ...{ id: 'coping-600', name: 'Coping 600', mix: 'coping', kg: 12.6, fillMinutes: 6, prepMinutes: 6 },
    ...{ stripMinutes: 6, stripCrew: 1, cleanMinutes: 5, rackSpaces: 1, perPiece: [], cuts: [] },
  },
];

const sealed = { oilEveryTurns: 8, oilMinutes: 10, oilDryMinutes: 60 };
const mould = (id: string, casting: string, turnsSinceOil: number, rest: Partial<Mould> = {}): Mould => ({
  ...{ id, makes: [{ casting, changeMinutes: 0 }], setFor: casting, condition: 'ready', prepped: false, turnsSinceOil },
  ...sealed,
  ...rest,
});

const moulds = ({ day }: DemoDates): Mould[] => [
  mould('1200 no. 1', 'panel-1200', 3, { condition: 'dirty' }),
  mould('1200 no. 2', 'panel-1200', 7),
  // A stop board shortens it.
  mould('1200 no. 3', 'panel-1200', 1, {
    makes: [
      { casting: 'panel-1200', changeMinutes: 0 },
      { casting: 'panel-900', changeMinutes: 15 },
    ],
  }),
  mould('900 no. 1', 'panel-900', 2),
  mould('900 no. 2', 'panel-900', 6, { condition: 'damaged', repairedOn: day(9) }),
  mould('900 no. 3', 'panel-900', 5),
  mould('600 no. 1', 'panel-600', 4),
  mould('600 no. 2', 'panel-600', 0, { condition: 'dirty' }),
  mould('450 no. 1', 'panel-450', 3, { prepped: true }),
  mould('450 no. 2', 'panel-450', 5),
  mould('Coping no. 1', 'coping-600', 1, { condition: 'dirty' }),
  mould('Coping no. 2', 'coping-600', 1),
];

const pins = (lengthMm: number) => [{ material: 'pin-rod', lengthMm, count: 4 }];
const rectangle = (long: number, short: number, courses: number) => [
  { casting: `panel-${long}`, count: 2 * courses },
  { casting: `panel-${short}`, count: 2 * courses },
];

const kits: Kit[] = [
  {
    ...{ id: 'planter', name: 'Planter 1200 x 600, two courses', packMinutes: 20 },
    ...{ pieces: rectangle(1200, 600, 2), parts: [], cuts: pins(480) },
  },
  {
    ...{ id: 'trough', name: 'Trough 900 x 450, one course', packMinutes: 12 },
    ...{ pieces: rectangle(900, 450, 1), parts: [], cuts: pins(300) },
  },
  {
    ...{ id: 'cold-frame', name: 'Cold frame base 900 x 600', packMinutes: 12 },
    ...{ pieces: rectangle(900, 600, 1), parts: [{ material: 'corner-clip', quantity: 4 }], cuts: pins(300) },
  },
  {
    ...{ id: 'herb-square', name: 'Herb square 450 x 450', packMinutes: 10, parts: [], cuts: pins(300) },
    pieces: [{ casting: 'panel-450', count: 4 }],
  },
  {
    ...{ id: 'coping-set', name: 'Coping set of six', packMinutes: 8, parts: [], cuts: [] },
    pieces: [{ casting: 'coping-600', count: 6 }],
  },
];

/** Larch Row Yard without its orders and pieces: a yard of our own invention. */
export const larchRowYard = (dates: DemoDates, now: string): YardFile => ({
  format: 'mould-rota/yard',
  version: 2,
  yard: {
    ...{ name: 'Larch Row Yard', timeZone: 'Europe/Dublin', now, horizonDays: 365, mixers: 1, rackSpaces: 40 },
    ...{
      setUpMinutes: 10,
      clearUpMinutes: 15,
      handoverDays: ['SA', 'TU'],
      sessionsInHand: 1,
      deliveryDaysInHand: 0,
      deliveredBy: '17:00',
    },
    ...{ batchWorthDays: 5, bagWorthDays: 0.5 },
  },
  work: work(dates),
  closed: [dates.next('SA', 33)],
  extra: [{ date: dates.next('FR', 6), start: '09:00', end: '12:00', crew: 1, allows: everything }],
  temperatures: temperatures(dates),
  materials: materials(dates),
  incoming: [],
  mixes,
  castings,
  moulds: moulds(dates),
  kits,
  finished: [],
  inMould: [],
  orders: [],
});
