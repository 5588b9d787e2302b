import type { Order } from '../../../shared/order.ts';
import { readYardFile, type YardFile, type YardFileInput } from '../../../shared/yard-file.ts';
import { type Dice, diceOf } from '../../support/random-yard/dice.ts';

const MONDAY = Date.UTC(2027, 3, 5);
const DAY = 86_400_000;
const HORIZON_DAYS = 150;

/** The date so many days after the Monday on which every tiny yard is. */
const dateAfter = (days: number): string => new Date(MONDAY + days * DAY).toISOString().slice(0, 10);

const clock = (minutes: number): string =>
  `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`;

const mixOf = (dice: Dice): YardFileInput['mixes'][number] => {
  const isSlow = dice.chance(0.35);
  return {
    id: 'mix',
    name: 'Mix',
    yieldKgPerBag: 30,
    maxBags: dice.pick([1, 1, 2]),
    mixMinutes: 10,
    workingMinutes: dice.step(10, 20, 5),
    washMinutes: dice.pick([0, 5]),
    attendMinutes: dice.pick([0, 0, 0, 30]),
    demouldMinutes: isSlow ? dice.step(600, 1500, 60) : dice.step(30, 80, 10),
    cureHours: dice.pick([0, 0, 24, 48, 96, 200]),
    perBag: [{ material: 'mortar', quantity: 1 }],
  };
};

const castingsOf = (dice: Dice): YardFileInput['castings'] =>
  Array.from({ length: dice.whole(1, 2) }, (_, i) => ({
    id: `panel-${i + 1}`,
    name: `Panel ${i + 1}`,
    mix: 'mix',
    kg: dice.pick([10, 15, 20, 30]),
    fillMinutes: dice.pick([5, 7, 10]),
    stripMinutes: dice.pick([5, 8]),
    cleanMinutes: dice.pick([4, 6]),
    prepMinutes: dice.pick([10, 12, 15]),
    perPiece: [],
    cuts: [],
  }));

const mouldsOf = (dice: Dice, castings: YardFileInput['castings']): YardFileInput['moulds'] => {
  const ids = castings.map(({ id }) => id);
  const own = dice.chance(0.5) ? ids.map((id) => [id]) : [dice.some(ids, ids.length)];
  if (own.length === 1 && dice.chance(0.4)) own.push(dice.chance(0.5) ? ids : [dice.pick(ids)]);
  const isCoated = dice.chance(0.2);
  return own.map((makes, k) => {
    const condition = dice.pick(['ready', 'ready', 'dirty'] as const);
    return {
      id: `mould ${k + 1}`,
      makes: makes.map((casting) => ({ casting, changeMinutes: makes.length > 1 ? dice.pick([5, 15]) : 0 })),
      setFor: dice.pick(makes),
      condition,
      prepped: condition === 'ready' && dice.chance(0.3),
      ...(isCoated ? { oilEveryTurns: 2, turnsSinceOil: dice.whole(0, 2), oilMinutes: 5, oilDryMinutes: 40 } : {}),
    };
  });
};

const hoursOf = (dice: Dice): YardFileInput['work'] => {
  const window = (weekday: string, start: number, minutes: number) => ({
    rule: `FREQ=WEEKLY;BYDAY=${weekday}`,
    from: '2027-01-01',
    start: clock(start),
    end: clock(start + minutes),
  });
  const work: YardFileInput['work'] = [window('SA', 480, dice.step(60, 160, 10))];
  if (dice.chance(0.5)) work.push(window('WE', 1080, dice.step(40, 90, 10)));
  if (dice.chance(0.2)) work.push({ ...window('TH', 1140, 30), allows: ['strip', 'prep', 'pack'] });
  return work;
};

type Orders = YardFileInput['orders'];

const linesFor = (
  dice: Dice,
  castings: YardFileInput['castings'],
  most: number,
  packs: boolean,
): Orders[number]['lines'] => {
  const of = dice.pick(castings).id;
  const quantity = dice.whole(1, most);
  if (most > 1 && castings.length > 1 && dice.chance(0.25))
    return castings.map(({ id }) => (packs ? { kit: `kit-${id}`, quantity: 1 } : { casting: id, quantity: 1 }));
  return [packs ? { kit: `kit-${of}`, quantity } : { casting: of, quantity }];
};

const piecesIn = (lines: Orders[number]['lines']): number => lines.reduce((n, { quantity }) => n + quantity, 0);

/** Orders for so many pieces in all, at most two each; dates given from the first days on until weeks after. */
const ordersOf = (dice: Dice, castings: YardFileInput['castings'], pieces: number, packs: boolean): Orders => {
  const orders: Orders = [];
  for (let left = pieces; left > 0; ) {
    const lines = linesFor(dice, castings, Math.min(2, left), packs);
    left -= piecesIn(lines);
    orders.push({
      id: `27-${orders.length + 1}`,
      weight: dice.whole(1, 3),
      ...(dice.chance(0.85) ? { due: dateAfter(dice.whole(3, 26)) } : {}),
      ...(dice.chance(0.1) ? { notBefore: dateAfter(dice.whole(2, 12)) } : {}),
      lines,
    });
  }
  return orders;
};

const piecesBefore = (
  dice: Dice,
  castings: YardFileInput['castings'],
  moulds: YardFileInput['moulds'],
  orders: Orders,
): Pick<YardFileInput, 'finished' | 'inMould'> => {
  const lot = () => ({
    casting: dice.pick(castings).id,
    count: 1,
    ...(dice.chance(0.75) ? { readyAt: `${dateAfter(dice.whole(1, 40))}T12:00:00+01:00` } : {}),
    ...(dice.chance(0.15) ? { order: dice.pick(orders).id } : {}),
  });
  const one = lot();
  const lots = dice.chance(0.55) ? [one, ...(dice.chance(0.6) ? [{ ...lot(), casting: one.casting }] : [])] : [];
  const mould = moulds[0]!;
  const isHeld = dice.chance(0.25);
  if (isHeld) Object.assign(mould, { condition: 'ready', prepped: false });
  const inMould = { mould: mould.id, casting: mould.setFor, filledAt: '2027-04-03T09:00:00+01:00' };
  return { finished: lots, inMould: isHeld ? [inMould] : [] };
};

const inputOf = (dice: Dice, seed: number): YardFileInput => {
  const castings = castingsOf(dice);
  const moulds = mouldsOf(dice, castings);
  const packs = dice.chance(0.2);
  const orders = ordersOf(dice, castings, dice.whole(1, 3), packs);
  const isScarce = dice.chance(0.2);
  return {
    format: 'mould-rota/yard',
    version: 2,
    yard: {
      name: `Tiny yard ${seed}`,
      timeZone: 'Europe/Dublin',
      now: `${dateAfter(0)}T07:00:00+01:00`,
      horizonDays: HORIZON_DAYS,
      setUpMinutes: dice.pick([0, 5]),
      clearUpMinutes: dice.pick([0, 5]),
      ...(dice.chance(0.5)
        ? { handoverDays: ['SA', ...dice.some(['MO', 'TU', 'TH'] as const, dice.whole(0, 1))] }
        : {}),
      sessionsInHand: dice.whole(0, 2),
    },
    work: hoursOf(dice),
    closed: [],
    extra: [],
    temperatures: [],
    materials: [{ id: 'mortar', name: 'Mortar', unit: 'bag', onHand: isScarce ? dice.whole(1, 3) : 100 }],
    incoming: isScarce ? [{ material: 'mortar', quantity: 50, on: dateAfter(dice.whole(4, 20)) }] : [],
    mixes: [mixOf(dice)],
    castings,
    moulds,
    kits: castings.map(({ id }) => ({
      id: `kit-${id}`,
      name: `Kit of ${id}`,
      pieces: [{ casting: id, count: 1 }],
      parts: [],
      cuts: [],
      packMinutes: packs ? 6 : 0,
    })),
    ...piecesBefore(dice, castings, moulds, orders),
    orders,
  };
};

/** The order that a tiny yard is asked about: one or two pieces of a casting a mould there makes. */
const askedOf = (dice: Dice, { moulds, kits }: YardFile): Order => {
  const casting = dice.pick(moulds).makes[0]!.casting;
  const kit = kits.find(({ pieces }) => pieces[0]?.casting === casting)!;
  const line = { quantity: dice.pick([1, 1, 2]) };
  return { id: 'asked', weight: 1, lines: [kit.packMinutes > 0 ? { kit: kit.id, ...line } : { casting, ...line }] };
};

/**
 * A tiny yard, and an order to ask about: one person, one mix, one or two moulds and castings, two to five pieces, now and
 * then finished pieces in two lots, a piece in a mould, sealing coats, packing, mortar that comes later, orders with a first
 * day. It depends on its seed alone. No temperatures, rack or lead times: the enumerator knows none.
 */
export const tinyYard = (seed: number): { yard: YardFile; order: Order } => {
  const dice = diceOf(seed + 900_000_000);
  const read = readYardFile(inputOf(dice, seed));
  if (!read.ok) throw new Error(`seed ${seed}: ${read.faults.map((x) => `${x.path}: ${x.message}`).join('; ')}`);
  return { yard: read.yard, order: askedOf(dice, read.yard) };
};
