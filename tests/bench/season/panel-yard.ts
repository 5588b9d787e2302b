import type { YardFileInput } from '../../../shared/yard-file.ts';
import { DELIVERY_DAYS_IN_HAND } from '../../../src/engine/begin/empty-yard.ts';

type Mould = YardFileInput['moulds'][number];
type Casting = YardFileInput['castings'][number];
type Material = YardFileInput['materials'][number];

/** A thin panel is 200 mm high: 13.5 kg at 900 mm, the rest by its length (common practice, no source). */
const panel = (lengthMm: number, more: Partial<Casting> = {}): Casting => ({
  ...{ id: `panel-${lengthMm}`, name: `Panel ${lengthMm}`, mix: 'thin', kg: Math.round(lengthMm * 0.15) / 10 },
  ...{ fillMinutes: lengthMm > 800 ? 7 : 5, stripMinutes: 8, cleanMinutes: 6, prepMinutes: lengthMm > 800 ? 12 : 10 },
  perPiece: [{ material: 'mesh', quantity: Math.round(lengthMm * 0.18) / 1000 }],
  cuts: [],
  ...more,
});

const COPING: Casting = {
  ...{ id: 'coping', name: 'Coping 600', mix: 'coping', kg: 12.6, fillMinutes: 6, stripMinutes: 6, cleanMinutes: 5 },
  ...{ prepMinutes: 6, perPiece: [], cuts: [] },
};

const THIN: YardFileInput['mixes'][number] = {
  ...{ id: 'thin', name: 'Thin panel mix', yieldKgPerBag: 27.5, bagStep: 0.5, maxBags: 2, mixMinutes: 10 },
  ...{ workingMinutes: 25, washMinutes: 5, demouldMinutes: 75, cureHours: 48, minCelsius: 5, maxCelsius: 32 },
  perBag: [{ material: 'mortar', quantity: 1 }],
};

const COPING_MIX: YardFileInput['mixes'][number] = {
  ...{ id: 'coping', name: 'Coping mix', yieldKgPerBag: 26.8, bagStep: 0.5, maxBags: 2, mixMinutes: 12 },
  ...{ workingMinutes: 45, washMinutes: 5, demouldMinutes: 1080, cureHours: 120, minCelsius: 3 },
  perBag: [{ material: 'concrete', quantity: 1 }],
};

/** So many moulds of a length. */
export const panelMoulds = (lengthMm: number, count: number, more: Partial<Mould> = {}): Mould[] =>
  Array.from({ length: count }, (_, i) => ({
    ...{ id: `${lengthMm} no. ${i + 1}`, makes: [{ casting: `panel-${lengthMm}` }], setFor: `panel-${lengthMm}` },
    ...{ condition: 'ready', turnsSinceOil: i, oilEveryTurns: 10, oilMinutes: 8, oilDryMinutes: 45 },
    ...more,
  }));

export const copingMoulds = (count: number): Mould[] =>
  Array.from({ length: count }, (_, i) => ({
    ...{ id: `Coping no. ${i + 1}`, makes: [{ casting: 'coping' }], setFor: 'coping', condition: 'ready' },
  }));

const MATERIALS: readonly Material[] = [
  { id: 'mortar', name: 'Fast-setting mortar, 25 kg', unit: 'bag', onHand: 8, leadDays: 3, minimum: 2 },
  { id: 'concrete', name: 'Concrete mix, 25 kg', unit: 'bag', onHand: 4, leadDays: 2 },
  { id: 'mesh', name: 'Galvanised mesh', unit: 'm2', onHand: 3, pack: 6, leadDays: 5 },
  { id: 'rod', name: 'Pin rod 12 mm, 3 m', unit: 'stick', onHand: 3, leadDays: 6, stickMm: 3000, kerfMm: 3 },
];

const pins = [{ material: 'rod', lengthMm: 300, count: 4 }];
const rectangle = (long: number, short: number): YardFileInput['kits'][number] => ({
  ...{ id: `kit-${long}`, name: `Planter ${long} x ${short}`, parts: [], cuts: pins, packMinutes: 12 },
  pieces: [
    { casting: `panel-${long}`, count: 2 },
    { casting: `panel-${short}`, count: 2 },
  ],
});

/** What tells one yard of thin panels from another. */
export interface PanelYard {
  name: string;
  timeZone?: string;
  yard?: Partial<YardFileInput['yard']>;
  work: YardFileInput['work'];
  moulds: Mould[];
  /** Hours in which it is made, by month from January: none is 15 degrees all year. */
  celsius?: readonly number[];
  materials?: Readonly<Record<string, Partial<Material>>>;
  incoming?: YardFileInput['incoming'];
  /** Changes to the castings, by length in millimetres. */
  panels?: Partial<Casting>;
  thin?: Partial<YardFileInput['mixes'][number]>;
  hasCoping?: boolean;
  /** A kit of eight large panels is offered that takes so many minutes to pack. */
  terracePackMinutes?: number;
}

const temperaturesOf = (celsius: readonly number[]): YardFileInput['temperatures'] =>
  celsius.map((degrees, month) => ({ from: `2027-${String(month + 1).padStart(2, '0')}-01`, celsius: degrees }));

/** Large enough that its pieces, and its packing, may take several sessions. */
const terrace = (packMinutes: number): YardFileInput['kits'][number] => ({
  ...{ id: 'terrace', name: 'Terrace edging', parts: [], cuts: [], packMinutes },
  pieces: [{ casting: 'panel-900', count: 8 }],
});

/** A yard file of panels 900 and 450 (one planter), 1100 and 600 (a larger one), and copings where it makes them. */
export const panelYard = (of: PanelYard): YardFileInput => ({
  ...{ format: 'mould-rota/yard', version: 1, closed: [], extra: [], finished: [], inMould: [], orders: [] },
  yard: {
    ...{ name: of.name, timeZone: of.timeZone ?? 'Europe/Dublin', now: '2027-01-01T00:00:00Z', horizonDays: 365 },
    ...{ setUpMinutes: 10, clearUpMinutes: 15, sessionsInHand: 1, deliveryDaysInHand: DELIVERY_DAYS_IN_HAND },
    ...of.yard,
  },
  work: of.work,
  temperatures: temperaturesOf(of.celsius ?? []),
  materials: MATERIALS.map((material) => ({ ...material, ...of.materials?.[material.id] })),
  incoming: of.incoming ?? [],
  mixes: [{ ...THIN, ...of.thin }, ...(of.hasCoping ? [COPING_MIX] : [])],
  castings: [...[1100, 900, 600, 450].map((length) => panel(length, of.panels)), ...(of.hasCoping ? [COPING] : [])],
  moulds: of.moulds,
  kits: [
    rectangle(900, 450),
    rectangle(1100, 600),
    ...(of.hasCoping
      ? [
          {
            id: 'copings',
            name: 'Coping set',
            pieces: [{ casting: 'coping', count: 4 }],
            parts: [],
            cuts: [],
            packMinutes: 6,
          },
        ]
      : []),
    ...(of.terracePackMinutes === undefined ? [] : [terrace(of.terracePackMinutes)]),
  ],
});

/** Hours of one or several people, each week on the same days. */
export const weekly = (days: string, start: string, end: string, crew = 1): YardFileInput['work'][number] => ({
  ...{ rule: `FREQ=WEEKLY;BYDAY=${days}`, from: '2027-01-01', start, end, crew },
});
