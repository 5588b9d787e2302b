import type { Tx } from '../../db/open.ts';
import { orderById } from '../../db/stores/order-store.ts';
import { CAME_OUT } from '../../shared/piece-to-mend.ts';
import { minuteOf } from '../../shared/time.ts';
import type { YardFile } from '../../shared/yard-file.ts';
import { enter } from '../../src/engine/book/enter.ts';
import type { Booked } from '../../src/engine/book/entry.ts';
import { MOULD_MARKS, mark } from '../../src/engine/book/mark.ts';
import { mend } from '../../src/engine/book/mend.ts';
import { handOver, unpack } from '../../src/engine/book/pack.ts';
import { throwAway } from '../../src/engine/book/throw-away.ts';
import type { PourWork } from '../../src/engine/book/work-done.ts';
import { calendarOf } from '../../src/engine/calendar/calendar.ts';
import type { Dice } from './random-yard/dice.ts';

/** Something a maker may record next, whether it can be so or not: half of it is nonsense, as on a bad day. */
type Act = (yard: YardFile, dice: Dice, tx: Tx) => Booked | Promise<Booked>;

const before = (yard: YardFile, dice: Dice): string =>
  calendarOf(yard.yard.timeZone).instantText(minuteOf(yard.yard.now) - dice.whole(0, 300));

const anyPour = (yard: YardFile, dice: Dice): PourWork => {
  const mix = dice.pick(yard.mixes);
  const pours = dice.some(yard.moulds, dice.whole(1, 3)).map(({ id, makes }) => {
    const castings = makes.filter(({ casting }) => yard.castings.find((one) => one.id === casting)?.mix === mix.id);
    const casting = dice.pick(
      castings.length > 0 ? castings : yard.castings.map((one) => ({ casting: one.id })),
    ).casting;
    const order = dice.chance(0.5) && yard.orders.length > 0 ? dice.pick(yard.orders).id : null;
    return { mould: id, casting, order, coated: dice.chance(0.3), filledAt: before(yard, dice) };
  });
  return { bags: null, pours };
};

const pourAny: Act = (yard, dice) => enter(yard, { kind: 'poured', ...anyPour(yard, dice) });

const throwAny: Act = (yard, dice) => throwAway(yard, anyPour(yard, dice), dice.chance(0.5) ? 'to clean' : 'set up');

const stripAny: Act = (yard, dice) => {
  const full = yard.inMould.length > 0 ? dice.pick(yard.inMould).mould : dice.pick(yard.moulds).id;
  const cameOut = dice.pick(CAME_OUT);
  return enter(yard, { kind: 'stripped', mould: full, cameOut, reason: 'chipped', doneAt: before(yard, dice) });
};

const setUpAny: Act = (yard, dice) => {
  const mould = dice.pick(yard.moulds);
  const casting = (dice.chance(0.9) ? mould.makes[0]?.casting : undefined) ?? dice.pick(yard.castings).id;
  return enter(yard, {
    kind: 'set up',
    mould: mould.id,
    casting,
    coated: dice.chance(0.5),
    doneAt: before(yard, dice),
  });
};

const packAny: Act = (yard, dice) => {
  const order = dice.pick(yard.orders);
  const planned = yard.finished.flatMap((_, finished) => (dice.chance(0.3) ? [{ finished, count: 1 }] : []));
  const work = { order: order.id, lines: order.lines, planned, evenShort: dice.chance(0.7) };
  if (dice.chance(0.3)) return handOver(yard, { ...work, isPacked: order.lines.length === 0, on: '2027-01-01' });
  return enter(yard, { kind: 'packed', ...work, doneAt: before(yard, dice) });
};

const unpackAny: Act = async (yard, dice, tx) => {
  const packed = yard.orders.filter(({ lines }) => lines.length === 0);
  const order = packed.length > 0 ? await orderById(tx, dice.pick(packed).id) : null;
  return order ? unpack(yard, { order: order.id, lines: order.lines }) : { ok: true, entries: [] };
};

const markAny: Act = (yard, dice) =>
  mark(yard, dice.pick(yard.moulds).id, dice.pick(MOULD_MARKS), {
    ...{ note: dice.pick(['', 'split']), cameOut: dice.pick([...CAME_OUT, null]) },
    repairedOn: dice.chance(0.5) ? null : '2099-01-01',
  });

const mendAny: Act = (yard, dice) => ({
  ok: true,
  entries: mend(
    { id: -1, casting: dice.pick(yard.castings).id, mould: 'a mould', filledAt: yard.yard.now },
    dice.chance(0.5) ? null : yard.yard.now,
  ),
});

const ACTS: readonly Act[] = [
  ...[pourAny, pourAny, throwAny, stripAny, stripAny, setUpAny, packAny, unpackAny, markAny, mendAny],
];

/** What some random work comes to in the book of a yard that has moulds, mixes and panels. */
export const anyWork: Act = (yard, dice, tx) =>
  dice.pick(yard.orders.length > 0 ? ACTS : ACTS.filter((one) => one !== packAny))(yard, dice, tx);

/** An odd yard may have nothing to work with. */
export const isWorked = ({ moulds, mixes, castings }: YardFile): boolean =>
  [moulds, mixes, castings].every(({ length }) => length > 0);
