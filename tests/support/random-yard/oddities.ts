import type { YardFileInput } from '../../../shared/yard-file.ts';
import type { Dice } from './dice.ts';

type Oddity = (yard: YardFileInput, dice: Dice) => void;

const setAll = (list: object[], values: object): void => {
  for (const x of list) Object.assign(x, values);
};

/** What a yard file may say and hardly any yard would: nothing, no time at all, no room, nobody there. */
const ODDITIES: Oddity[] = [
  (y) => Object.assign(y.yard, { mixers: 0 }),
  (y) => Object.assign(y.yard, { horizonDays: 1 }),
  (y) => Object.assign(y.yard, { setUpMinutes: 90, clearUpMinutes: 120 }),
  (y) => Object.assign(y.yard, { batchWorthDays: 0, bagWorthDays: 0 }),
  (y) => Object.assign(y, { work: [], extra: [] }),
  (y) => Object.assign(y, { moulds: [], inMould: [] }),
  (y) => Object.assign(y, { orders: [], finished: [], inMould: [] }),
  (y, d) => Object.assign(d.pick(y.orders), { lines: [] }),
  (y, d) => Object.assign(d.pick(y.orders), { weight: 0 }),
  (y, d) => Object.assign(d.pick(y.orders), { lines: [{ casting: d.pick(y.castings).id, quantity: 0 }] }),
  (y, d) => Object.assign(d.pick(y.castings), { prepMinutes: 0, cleanMinutes: 0, stripMinutes: 0 }),
  (y, d) => Object.assign(d.pick(y.castings), { rackSpaces: 0, stripCrew: 0 }),
  (y, d) => Object.assign(d.pick(y.castings), { kg: 0 }),
  (y, d) => Object.assign(d.pick(y.mixes), { mixMinutes: 0, washMinutes: 0, crew: 0 }),
  (y, d) => Object.assign(d.pick(y.mixes), { demouldMinutes: 0, cureHours: 0 }),
  (y, d) => Object.assign(d.pick(y.mixes), { activationKelvin: 0 }),
  (y, d) => Object.assign(d.pick(y.mixes), { protectHours: 1000, minCelsius: 6 }),
  (y, d) => Object.assign(d.pick(y.mixes), { crew: 9 }),
  (y, d) => Object.assign(d.pick(y.mixes), { attendMinutes: 300 }),
  (y, d) => Object.assign(d.pick(y.kits), { packMinutes: 700 }),
  (y, d) => Object.assign(d.pick(y.kits), { pieces: [], parts: [{ material: 'lid', quantity: 0 }] }),
  (y) => setAll(y.work, { crew: 0 }),
  (y, d) => y.work.length > 0 && Object.assign(d.pick(y.work), { allows: [] }),
  (y) => y.work.push({ rule: 'FREQ=DAILY', from: '2026-01-01', start: '00:00', end: '24:00', crew: 1 }),
  (y) => setAll(y.moulds, { oilEveryTurns: 1, oilDryMinutes: 1440 }),
  (y) => setAll(y.materials, { onHand: 0, leadDays: undefined, minimum: 3 }),
  (y) => setAll(y.materials, { onHand: 100, minimum: 100, leadDays: 0 }),
  (y) => Object.assign(y, { temperatures: [{ from: '2020-01-01', celsius: -200 }] }),
  (y) => Object.assign(y, { temperatures: [{ from: '2020-01-01', celsius: 60 }] }),
  (y) => Object.assign(y.yard, { timeZone: 'Africa/Cairo' }),
];

/** Between one and three oddities on top of a yard; the file stays valid, whatever it means. */
export const withOddities = (yard: YardFileInput, dice: Dice): YardFileInput => {
  for (const odd of dice.some(ODDITIES, dice.whole(1, 3))) if (yard.orders.length > 0) odd(yard, dice);
  return yard;
};
