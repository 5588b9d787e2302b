import { describe, expect, test } from 'vitest';
import type { PlanFile } from '../../../shared/plan.ts';
import { readYardFile, type YardFile, type YardFileInput } from '../../../shared/yard-file.ts';
import { planYard } from '../../../src/engine/plan.ts';
import type { Effort } from '../../../src/engine/search/effort.ts';
import { audit } from '../../contract/audit-plan.mjs';

/**
 * Tiny yards in which several plans have the same score, and what a foreman makes of them, worked out on paper.
 *
 * Unless a yard says otherwise: Monday 5 April 2027 in Dublin, one person, moulds clean and empty, set up 12 minutes, clean 6
 *   (after a strip), change over 6, mix 10, fill 7, wash out 5, strip 8, a piece 13.6 kg, a bag 30 kg and a batch one bag.
 */
type Input = YardFileInput;
const RAPID = { demouldMinutes: 75, cureHours: 0 };
const OVERNIGHT = { demouldMinutes: 900, cureHours: 0 };

const mix = (more: Partial<Input['mixes'][number]>): Input['mixes'][number] => ({
  ...{ id: 'mix', name: 'Mix', yieldKgPerBag: 30, maxBags: 1, mixMinutes: 10, workingMinutes: 60, washMinutes: 5 },
  ...{ demouldMinutes: 75, cureHours: 0, perBag: [] },
  ...more,
});
const casting = (id: string, of = 'mix'): Input['castings'][number] => ({
  ...{ id, name: id, mix: of, kg: 13.6, fillMinutes: 7, stripMinutes: 8, cleanMinutes: 6, prepMinutes: 12 },
  ...{ perPiece: [], cuts: [] },
});
const mould = (id: string, makes: string[], setFor = makes[0]!): Input['moulds'][number] => ({
  ...{ id, setFor, condition: 'ready' },
  makes: makes.map((one) => ({ casting: one, changeMinutes: 6 })),
});
const order = (id: string, due: string, pieces: Record<string, number>): Input['orders'][number] => ({
  ...{ id, due },
  lines: Object.entries(pieces).map(([one, quantity]) => ({ casting: one, quantity })),
});
const hours = (days: string, start: string, end: string): Input['work'] => [
  { rule: `FREQ=WEEKLY;BYDAY=${days}`, from: '2027-01-01', start, end },
];

const yardOf = (changes: Partial<Input>, more: Partial<Input['yard']> = {}): YardFile => {
  const yard = { name: 'Hand', timeZone: 'Europe/Dublin', now: '2027-04-05T07:00:00+01:00', horizonDays: 120, ...more };
  const none = { closed: [], extra: [], temperatures: [], materials: [], incoming: [], kits: [], finished: [] };
  const read = readYardFile({
    ...{ format: 'mould-rota/yard', version: 2, ...none, inMould: [], work: hours('SA', '08:00', '17:00') },
    ...{ mixes: [mix(RAPID)], castings: [], moulds: [], orders: [], ...changes, yard },
  });
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return read.yard;
};

const planned = (yard: YardFile, effort: Effort): PlanFile => {
  const plan = planYard(yard, { effort });
  expect(audit(yard, plan).faults).toEqual([]);
  return plan;
};

const clock = (instant: string) => instant.slice(5, 16).replace('T', ' ');
const fillsOf = (plan: PlanFile) =>
  [...plan.pours].sort((a, b) => (a.fillStart < b.fillStart ? -1 : 1)).map((p) => `${clock(p.fillStart)} ${p.casting}`);
const daysOf = (plan: PlanFile) => [...new Set(plan.batches.map(({ start }) => start.slice(0, 10)))];

const QUICK: Effort[] = ['quick'];
/** A second a yard more. */
const BOTH: Effort[] = [...QUICK, 'normal'];

// One after another in one mould on a Saturday. 08:00 set up -> 08:12 mix -> 08:22 fill -> 08:29; hard at 09:44, stripped 09:52.
// Each further turn with the casting it is set for: clean and set up 18 -> mix 10 -> fill 7 -> 75 -> strip 8 = 118 minutes; with
// another one 124. One change-over: 09:52 + 118 + 124 + 118 = 15:52. Three: 16:04.
describe.each(QUICK)('one mould for two lengths, two of each, %s', (effort) => {
  const yard = (orders: Input['orders'], setFor = 'long') =>
    yardOf({ castings: [casting('long'), casting('short')], moulds: [mould('M', ['long', 'short'], setFor)], orders });
  const once = ['04-10 08:22 long', '04-10 10:20 long', '04-10 12:24 short', '04-10 14:22 short'];

  test('it is changed over once', () => {
    const plan = planned(yard([order('a', '2027-04-10', { long: 2, short: 2 })]), effort);
    expect(fillsOf(plan)).toEqual(once);
    expect(plan.orders[0]!.completesAt).toBe('2027-04-10T15:52:00+01:00');
  });

  test('also when each is wanted by two orders of one date', () => {
    const each = { long: 1, short: 1 };
    const plan = planned(yard([order('a', '2027-04-10', each), order('b', '2027-04-10', each)]), effort);
    expect(fillsOf(plan)).toEqual(once);
  });

  test('and begins with the length that it is set for', () => {
    const plan = planned(yard([order('a', '2027-04-10', { long: 2, short: 2 })], 'short'), effort);
    expect(fillsOf(plan).map((fill) => fill.slice(12))).toEqual(['short', 'short', 'long', 'long']);
  });
});

describe.each(QUICK)('a mix that is hard overnight, Tuesday and Friday evenings, %s', (effort) => {
  const evenings = { work: hours('TU,FR', '18:00', '21:00') };

  // Stripped on Friday whenever it is filled on Tuesday. 18:00 set up -> 18:12 mix -> 18:22 fill -> 18:29. In the last minutes
  // of the session it would be filled at 20:48.
  test('goes out early where nothing else is to be done', () => {
    const of = { mixes: [mix(OVERNIGHT)], castings: [casting('p')], moulds: [mould('P', ['p'])] };
    const plan = planned(yardOf({ ...evenings, ...of, orders: [order('a', '2027-04-30', { p: 1 })] }), effort);
    expect(fillsOf(plan)).toEqual(['04-06 18:22 p']);
  });

  // The rapid mould makes two turns: filled 18:22 to 18:29, hard at 19:44, stripped 19:52, set up again 20:10, filled 20:20. The
  // other one is set up and filled while it cures: 18:34 wash over -> 18:46 -> mix -> 18:56.
  test('makes way for a mould that can take a second turn', () => {
    const plan = planned(
      yardOf({
        ...evenings,
        mixes: [mix(RAPID), mix({ id: 'slow', ...OVERNIGHT })],
        castings: [casting('p', 'slow'), casting('r')],
        moulds: [mould('P', ['p']), mould('R', ['r'])],
        orders: [order('a', '2027-04-30', { p: 1, r: 2 })],
      }),
      effort,
    );
    expect(fillsOf(plan)).toEqual(['04-06 18:22 r', '04-06 18:56 p', '04-06 20:20 r']);
  });
});

// Two pieces fill a batch. Three bags are there, and one a piece is needed; a parcel comes on Friday the 16th. Six pieces are
// three batches, and complete on the 24th, stripped a week after the 17th, whether two are poured on the 10th or none.
test.each(BOTH)('what is in hand is poured, not all of it staked on a parcel, %s', (effort) => {
  const yard = yardOf(
    {
      work: hours('SA', '08:00', '16:00'),
      materials: [{ id: 'mortar', name: 'Mortar', unit: 'bag', onHand: 3 }],
      incoming: [{ material: 'mortar', quantity: 10, on: '2027-04-16' }],
      mixes: [mix({ ...OVERNIGHT, yieldKgPerBag: 14, maxBags: 2, perBag: [{ material: 'mortar', quantity: 1 }] })],
      castings: [casting('p')],
      moulds: ['M1', 'M2', 'M3', 'M4', 'M5', 'M6'].map((id) => mould(id, ['p'])),
      orders: [order('a', '2027-05-30', { p: 6 })],
    },
    { handoverDays: ['SA'] },
  );
  const plan = planned(yard, effort);
  expect(plan.score).toMatchObject({ batches: 3, weightedCompletionDays: 19 });
  expect(daysOf(plan)).toEqual(['2027-04-10', '2027-04-17']);
});

// One mould and room for one piece that cures, every evening. Both are handed over on Saturday the 10th, whichever comes first.
// A change-over of 6 minutes is no reason to let the one that is due then wait.
test.each(BOTH)('what is due on Saturday is poured before what is due in July, %s', (effort) => {
  const yard = yardOf(
    {
      work: hours('MO,TU,WE,TH,FR,SA', '18:00', '20:00'),
      mixes: [mix({ ...OVERNIGHT, cureHours: 48 })],
      castings: [casting('p'), casting('q')],
      moulds: [mould('M', ['p', 'q'])],
      orders: [{ ...order('july', '2027-07-10', { p: 1 }), weight: 3 }, order('next', '2027-04-10', { q: 1 })],
    },
    { rackSpaces: 1, handoverDays: ['SA'] },
  );
  const plan = planned(yard, effort);
  expect(plan.score.weightedCompletionDays).toBe(20);
  // 18:00 change over and set up 18 -> 18:18 mix -> 18:28.
  expect(fillsOf(plan)[0]).toBe('04-05 18:28 q');
});

// Two moulds for three short panels, one for two long ones: three bags of 27.5 kg, one of them for one panel alone. With the
// long mould in the first batch (08:00 and 08:12 set up, 08:24 mix, the short one 08:34, the long one 08:41 to 08:48, hard at
// 10:03) its second turn is filled before noon. Left out of it, it was filled at 10:39 and 12:37.
test.each(BOTH)('the scarcest mould makes its first turn at once, %s', (effort) => {
  const plan = planned(
    yardOf({
      mixes: [mix({ ...RAPID, yieldKgPerBag: 27.5 })],
      castings: [casting('short'), casting('long')],
      moulds: [mould('S1', ['short']), mould('S2', ['short']), mould('L', ['long'])],
      orders: [order('a', '2027-04-10', { short: 3 }), order('b', '2027-04-17', { long: 2 })],
    }),
    effort,
  );
  const long = fillsOf(plan).filter((fill) => fill.endsWith('long'));
  expect(plan.score).toMatchObject({ batches: 3, bags: 3 });
  expect(long).toHaveLength(2);
  expect(long[0]! <= '04-10 08:41 long').toBe(true);
  expect(long[1]! < '04-10 12:00 long').toBe(true);
});

// Nine turns of the big mould, a Saturday each, are stripped by 12 June; the small piece of that order is needed by then. Poured
// on the first Saturday it would lie about for eight weeks.
test.each(QUICK)('one piece is not poured months before the others of its order, %s', (effort) => {
  const plan = planned(
    yardOf(
      {
        work: hours('SA', '08:00', '10:00'),
        mixes: [mix(OVERNIGHT), mix({ id: 'thick', ...OVERNIGHT })],
        castings: [casting('small'), casting('big', 'thick')],
        moulds: [mould('S', ['small']), mould('B', ['big'])],
        orders: [order('a', '2027-06-30', { small: 1, big: 9 })],
      },
      { handoverDays: ['SA'] },
    ),
    effort,
  );
  expect(plan.orders[0]!.completesOn).toBe('2027-06-12');
  const small = plan.pours.find((pour) => pour.casting === 'small')!;
  expect(small.pieceReadyAt >= '2027-05-13').toBe(true);
});

// The mould is wanted on the 10th for one order, and from 8 May on for another: nothing is done for that one before.
test.each(QUICK)('no mould is set up for an order before its first day, %s', (effort) => {
  const plan = planned(
    yardOf({
      mixes: [mix(OVERNIGHT)],
      castings: [casting('p'), casting('q')],
      moulds: [mould('P', ['p', 'q'])],
      orders: [
        { ...order('later', '2027-06-30', { p: 1 }), notBefore: '2027-05-08' },
        order('now', '2027-04-30', { q: 1 }),
      ],
    }),
    effort,
  );
  expect(plan.pours.map(({ casting: of, prepStart }) => `${clock(prepStart)} ${of}`).sort()).toEqual([
    '04-10 08:00 q',
    '05-08 08:00 p',
  ]);
});
