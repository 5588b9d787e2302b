import { dateOfDay, dayNumber } from '../../shared/time.ts';
import { readYardFile, type YardFile, type YardFileInput } from '../../shared/yard-file.ts';
import { type Dice, diceOf } from './random-yard/dice.ts';

const LENGTHS = [400, 550, 610, 800, 914, 1220];
const NOW = '2027-03-01T07:00:00+00:00';
/** What one piece asks of a person over its turn; a person works 8 hours less setting up and clearing up. */
const PIECES_PER_PERSON_DAY = 9;
const PIECES_PER_ORDER = 13;
/** Due dates go up to this much before or after the day the yard could just make it. */
const SPREAD = 0.45;
const FIRST_DUE_DAYS = 4;

/** One coping length in six; the others are rapid. */
const mixOf = (lengthMm: number) => (lengthMm === 610 ? 'ordinary' : 'rapid');
const nameOf = (lengthMm: number) => `${mixOf(lengthMm)}-${lengthMm}`;

const castingOf = (lengthMm: number): YardFileInput['castings'][number] => ({
  id: nameOf(lengthMm),
  name: `Panel ${lengthMm}`,
  mix: mixOf(lengthMm),
  // 13.6 kg for 914 mm: common practice, no source.
  kg: Math.round((lengthMm / 914) * 136) / 10,
  fillMinutes: 5,
  stripMinutes: 7,
  cleanMinutes: 5,
  prepMinutes: 10,
  perPiece: [{ material: 'mesh', quantity: 0.12 }],
  cuts: [{ material: 'sleeve-pipe', lengthMm: 190, count: 2 }],
});

const MIXES: YardFileInput['mixes'] = [
  {
    id: 'rapid',
    name: 'Fast-setting panel mix',
    yieldKgPerBag: 27.5,
    bagStep: 0.5,
    maxBags: 2,
    mixMinutes: 8,
    workingMinutes: 30,
    washMinutes: 5,
    demouldMinutes: 75,
    cureHours: 48,
    minCelsius: 3,
    maxCelsius: 32,
    perBag: [{ material: 'fast-setting-mortar', quantity: 1 }],
  },
  {
    id: 'ordinary',
    name: 'Coping mix',
    yieldKgPerBag: 26.8,
    bagStep: 0.5,
    maxBags: 4,
    mixMinutes: 12,
    workingMinutes: 60,
    washMinutes: 5,
    demouldMinutes: 1080,
    cureHours: 120,
    minCelsius: 3,
    protectHours: 24,
    perBag: [{ material: 'ordinary-mix', quantity: 1 }],
  },
];

const material = (id: string, onHand: number, leadDays: number, more = {}) => ({
  id,
  name: id,
  unit: 'each',
  onHand,
  leadDays,
  ...more,
});

const kitsOf = (): YardFileInput['kits'] =>
  [
    [1220, 550, 4],
    [914, 400, 4],
    [800, 800, 2],
    [914, 550, 6],
    [610, 610, 3],
  ].map(([long, short, count], i) => ({
    id: `kit-${i + 1}`,
    name: `Planter ${long} x ${short}`,
    pieces: [...new Set([long!, short!])].map((length) => ({ casting: nameOf(length), count: count! })),
    parts: [],
    cuts: [{ material: 'pin-rod', lengthMm: 300, count: 4 }],
    packMinutes: 8,
  }));

const piecesIn = (kit: YardFileInput['kits'][number]) => kit.pieces.reduce((sum, x) => sum + x.count, 0);

/** So many orders, in how many pieces each on average, and how many the yard can make on a working day. */
interface Asked {
  count: number;
  pieces: number;
  piecesPerDay: number;
}

/** One or more kits an order. */
const ordersOf = (dice: Dice, { count, pieces, piecesPerDay }: Asked): YardFileInput['orders'] => {
  const kits = kitsOf();
  const today = dayNumber(NOW.slice(0, 10));
  let asked = 0;
  return Array.from({ length: count }, (_, i) => {
    const lines: YardFileInput['orders'][number]['lines'] = [];
    do {
      const kit = dice.pick(kits);
      lines.push({ kit: kit.id, quantity: 1 });
      asked += piecesIn(kit);
    } while (asked < pieces * i + pieces / 2 || dice.chance(0.2));
    const weekdays = (asked / piecesPerDay) * (1 + SPREAD * (2 * dice.unit() - 1.3));
    return {
      id: `27-${String(i + 1).padStart(4, '0')}`,
      due: dateOfDay(today + FIRST_DUE_DAYS + Math.round((weekdays * 7) / 5)),
      weight: dice.pick([1, 1, 1, 3, 6]),
      lines,
    };
  });
};

const mouldsOf = (count: number): YardFileInput['moulds'] =>
  Array.from({ length: count }, (_, i) => {
    const lengthMm = LENGTHS[i % LENGTHS.length]!;
    return {
      id: `${lengthMm} no. ${Math.floor(i / LENGTHS.length) + 1}`,
      makes: [{ casting: nameOf(lengthMm) }],
      setFor: nameOf(lengthMm),
      condition: i % 7 === 0 ? 'dirty' : 'ready',
      oilEveryTurns: 20,
      turnsSinceOil: i % 20,
      oilMinutes: 10,
      oilDryMinutes: 60,
    };
  });

/**
 * A yard for measuring: so many orders of about 13 pieces over so many moulds of six lengths, 8-hour weekdays, a fast-setting mix
 * beside an ordinary one, people and mixers in proportion to the moulds, due dates around what people can make.
 * `scaledYard(130, 30)` asks for about 1,700 pours, `scaledYard(1000, 200)` for about 13,000. With cuts, 5,000 orders of 13
 * pieces are more than a yard file may ask for: `scaledYard(5000, 1000, { pieces: 12 })` are 60,000 pours.
 */
export const scaledYard = (orders: number, moulds: number, { seed = 1, pieces = PIECES_PER_ORDER } = {}): YardFile => {
  const crew = Math.max(1, Math.ceil(moulds / 10));
  const read = readYardFile({
    format: 'mould-rota/yard',
    version: 1,
    yard: {
      name: 'Scaled yard',
      timeZone: 'Europe/Dublin',
      now: NOW,
      horizonDays: 365,
      mixers: Math.ceil(moulds / 25),
    },
    work: [{ rule: 'FREQ=WEEKLY;BYDAY=MO,TU,WE,TH,FR', from: '2027-01-04', start: '08:00', end: '16:00', crew }],
    closed: ['2027-03-17', '2027-03-29'],
    extra: [],
    temperatures: [
      { from: '2027-03-01', celsius: 8 },
      { from: '2027-04-01', celsius: 11 },
      { from: '2027-05-01', celsius: 15 },
      { from: '2027-06-01', celsius: 18 },
      { from: '2027-09-01', celsius: 13 },
    ],
    materials: [
      material('fast-setting-mortar', 200, 2),
      material('ordinary-mix', 100, 2),
      material('mesh', 50, 3, { pack: 6 }),
      material('sleeve-pipe', 40, 2, { stickMm: 3000, kerfMm: 2 }),
      material('pin-rod', 40, 2, { stickMm: 3000, kerfMm: 3 }),
    ],
    incoming: [],
    mixes: MIXES,
    castings: LENGTHS.map(castingOf),
    moulds: mouldsOf(moulds),
    kits: kitsOf(),
    finished: [],
    inMould: [],
    orders: ordersOf(diceOf(seed), { count: orders, pieces, piecesPerDay: crew * PIECES_PER_PERSON_DAY }),
  });
  if (!read.ok) throw new Error(read.faults.map((x) => `${x.path}: ${x.message}`).join('; '));
  return read.yard;
};
