import { minuteOf, WEEKDAYS } from '../../shared/time.ts';
import { readYardFile, type YardFile, type YardFileInput } from '../../shared/yard-file.ts';
import { calendarOf } from '../../src/engine/calendar/calendar.ts';
import { demandOf, piecesOf } from './random-yard/demand.ts';
import { type Dice, diceOf } from './random-yard/dice.ts';
import { withDueDates } from './random-yard/due-dates.ts';
import { hoursOf, type Place, placeOf } from './random-yard/hours.ts';
import { withLongPacking } from './random-yard/long-packing.ts';
import { castingsOf, mixesOf, temperaturesOf } from './random-yard/mixes.ts';
import { inMouldOf, mouldsOf } from './random-yard/moulds.ts';
import { withOddities } from './random-yard/oddities.ts';
import { stockOf, withOffcuts } from './random-yard/stock.ts';

/** Yards as they are; the odd ones try the limits of the format. */
export const YARD_KINDS = ['small', 'typical', 'busy', 'tight-rack', 'cold-spring'] as const;
export type YardKind = (typeof YARD_KINDS)[number] | 'odd';

interface Size {
  orders: [number, number];
  /** Most pieces asked for in all. */
  pieces: [number, number];
  lengths: number;
  mouldsPerLength: number;
  people: [number, number];
}

const SMALL: Size = { orders: [1, 4], pieces: [3, 12], lengths: 2, mouldsPerLength: 2, people: [1, 2] };
const TYPICAL: Size = { orders: [8, 15], pieces: [80, 250], lengths: 4, mouldsPerLength: 4, people: [1, 3] };
const BUSY: Size = { orders: [15, 40], pieces: [250, 600], lengths: 6, mouldsPerLength: 6, people: [2, 4] };
const MIDDLE: Size = { orders: [3, 10], pieces: [12, 90], lengths: 3, mouldsPerLength: 3, people: [1, 4] };
const SIZES: Record<YardKind, Size> = {
  small: SMALL,
  typical: TYPICAL,
  busy: BUSY,
  'tight-rack': MIDDLE,
  'cold-spring': MIDDLE,
  odd: MIDDLE,
};
const KINDS: readonly YardKind[] = ['small', 'small', 'small', 'tight-rack', 'tight-rack', 'cold-spring', 'typical'];

type Lists = Pick<YardFileInput, 'finished' | 'inMould' | 'orders' | 'kits'>;

/** Sets some pieces aside for an order: mostly one that asks for them. */
const setAside = <T extends { casting: string }>(dice: Dice, pieces: T[], lists: Pick<Lists, 'orders' | 'kits'>): T[] =>
  pieces.map((piece) => {
    if (lists.orders.length === 0 || !dice.chance(0.3)) return piece;
    const asking = lists.orders.filter((order) => piecesOf(order, lists.kits).has(piece.casting));
    const order = asking.length > 0 && dice.chance(0.9) ? dice.pick(asking) : dice.pick(lists.orders);
    return { ...piece, order: order.id };
  });

const finishedOf = (dice: Dice, castings: YardFileInput['castings'], place: Place): YardFileInput['finished'] => {
  const calendar = calendarOf(place.timeZone);
  return dice.some(castings, dice.whole(0, 2)).map((casting) => ({
    casting: casting.id,
    count: dice.whole(1, 3),
    ...(dice.chance(0.4) ? { readyAt: calendar.instantText(minuteOf(place.now) + dice.whole(-1000, 6000)) } : {}),
  }));
};

/**
 * Now and then the pieces of one lot are two lots, of which the second is ready earlier: it takes no more of the rack. By
 * dice of its own, so that all else of a seed's yard stays what it was.
 */
const inTwoLots = (seed: number, finished: YardFileInput['finished'], place: Place): YardFileInput['finished'] => {
  const dice = diceOf(seed + 500_000_000);
  const calendar = calendarOf(place.timeZone);
  return finished.flatMap((lot) => {
    if (lot.count < 2 || !dice.chance(0.4)) return [lot];
    const count = dice.whole(1, lot.count - 1);
    const ready = lot.readyAt === undefined ? minuteOf(place.now) : minuteOf(lot.readyAt);
    const readyAt = calendar.instantText(ready - dice.whole(1, 2000));
    const { order: _aside, ...rest } = lot;
    return [
      { ...lot, count: lot.count - count },
      { ...(dice.chance(0.5) ? lot : rest), count, readyAt },
    ];
  });
};

/** Of one yard in sixteen, by dice of its own, an order is so large that it is packed over several sessions. */
const nowAndThenLong = (seed: number, demand: Pick<Lists, 'orders' | 'kits'>): Pick<Lists, 'orders' | 'kits'> => {
  const dice = diceOf(seed + 700_000_000);
  return dice.chance(1 / 16) ? withLongPacking(dice, demand) : demand;
};

/** Room to cure in: none set, plenty, or little more than is taken already. */
const rackOf = (
  dice: Dice,
  finished: YardFileInput['finished'],
  pieces: number,
  tight: boolean,
): number | undefined => {
  if (!tight && dice.chance(0.5)) return undefined;
  const taken = finished.reduce((sum, x) => sum + (x.readyAt ? x.count * 2 : 0), 0);
  return taken + (tight ? dice.whole(3, 8) : 12 + dice.whole(0, pieces));
};

const yardOf = (dice: Dice, place: Place, rackSpaces: number | undefined, seed: number): YardFileInput['yard'] => ({
  name: `Yard ${seed}`,
  timeZone: place.timeZone,
  now: place.now,
  horizonDays: dice.chance(0.15) ? dice.whole(5, 40) : dice.whole(120, 365),
  mixers: dice.chance(0.25) ? 2 : 1,
  ...(rackSpaces === undefined ? {} : { rackSpaces }),
  setUpMinutes: dice.pick([0, 5, 10, 15]),
  clearUpMinutes: dice.pick([0, 10, 15]),
  ...(dice.chance(0.5) ? { handoverDays: dice.some(WEEKDAYS, dice.whole(1, 3)) } : {}),
  sessionsInHand: dice.whole(0, 2),
  deliveryDaysInHand: [0, 3, 7][seed % 3]!,
});

const inputOf = (dice: Dice, kind: YardKind, seed: number): YardFileInput => {
  const size = SIZES[kind];
  const place = placeOf(dice);
  const people = dice.whole(...size.people);
  const pieces = dice.whole(...size.pieces);
  const mixes = mixesOf(dice, people);
  const castings = castingsOf(dice, mixes, size.lengths, people);
  const moulds = mouldsOf(dice, castings, size.mouldsPerLength, place.today);
  const demand = nowAndThenLong(seed, demandOf(dice, castings, pieces, dice.whole(...size.orders)));
  const finished = setAside(dice, finishedOf(dice, castings, place), demand);
  const yard = yardOf(dice, place, rackOf(dice, finished, pieces, kind === 'tight-rack'), seed);
  const hours = hoursOf(dice, place, people, kind === 'busy');
  const temperatures = temperaturesOf(dice, place, kind === 'cold-spring');
  const stock = stockOf(dice, place, pieces);
  return {
    format: 'mould-rota/yard',
    version: 1,
    yard,
    ...hours,
    temperatures,
    ...{ ...stock, materials: withOffcuts(diceOf(seed + 600_000_000), stock.materials) },
    mixes,
    castings,
    moulds,
    ...demand,
    finished: inTwoLots(seed, finished, place),
    inMould: setAside(dice, inMouldOf(dice, moulds, place), demand),
  };
};

/**
 * A valid yard that depends on its seed alone, with about everything a yard file can say in it. Without a kind the seed
 * picks one, small ones most often and odd ones never. Small yards ask for at most 12 pieces; odd ones are what no yard
 * would be. Throws where the file has a fault: then the
 * generator is wrong.
 */
export const randomYard = (seed: number, kind?: YardKind): YardFile => {
  const dice = diceOf(seed);
  const picked = dice.pick(KINDS);
  const input = inputOf(dice, kind ?? picked, seed);
  const read = readYardFile(kind === 'odd' ? withOddities(input, dice) : input);
  if (!read.ok) throw new Error(`seed ${seed}: ${read.faults.map((x) => `${x.path}: ${x.message}`).join('; ')}`);
  return withDueDates(dice, read.yard);
};
