import { expect, test } from 'vitest';
import { habitsOfYard, setHabits } from '../../../db/stores/habits-store.ts';
import { addWorkRecords } from '../../../db/stores/work-record-store.ts';
import { currentPlan } from '../../../src/usecases/plan/make-plan.ts';
import { sparesOfPlan } from '../../../src/usecases/plan/spares-of-plan.ts';
import { archived } from '../../support/archived.ts';
import { stripsBefore } from '../../support/records.ts';
import { screensOn, textOf } from '../../support/screens.ts';
import { smallYard } from '../../support/small-yard.ts';
import { yardContext } from '../../support/yard-context.ts';

/** Six pairs, 12 panels, for a Saturday that leaves time. */
const TWELVE = [{ id: '27-001', customer: 'School garden', due: '2027-05-08', lines: [{ kit: 'pair', quantity: 6 }] }];

const spareOf = async (context: Awaited<ReturnType<typeof yardContext>>) => {
  const { plan, yard } = await currentPlan(context);
  const free = plan.pours.filter(({ order }) => order === undefined);
  return { free, told: await sparesOfPlan(context, { plan, yard }), on: plan.orders[0]?.completesOn };
};

test('nobody who has no record gets a piece that was not asked for; who wants one by guesses has it told everywhere', async () => {
  const context = await yardContext(smallYard({ orders: TWELVE }));
  const without = await spareOf(context);
  expect([without.free, without.told]).toEqual([[], []]);

  await context.database.write((tx) => setHabits(tx, { spares: 'always' }));
  const { get, post, textAfter } = screensOn(context.database, context.now);
  await textAfter(await post('/orders', { what0: 'casting:panel-900', quantity0: '1', customer: 'Brid Casey' }));
  const { free, told, on } = await spareOf(context);
  expect(free).toHaveLength(1);
  expect(told).toEqual([
    {
      ...{ casting: 'panel-900', name: 'Panel 900', orders: ['27-001'] },
      pour: { id: free[0]!.id, mould: free[0]!.mould },
      on: free[0]!.stripEnd.slice(0, 10),
    },
  ]);
  expect(on).toBe(without.on);
  // Once it is poured it is in its mould for nobody, and told until it comes out.
  const current = await currentPlan(context);
  const [spare] = free;
  const { mould, casting, fillEnd, stripStart, stripEnd } = spare!;
  const poured = {
    plan: {
      ...current.plan,
      pours: current.plan.pours.filter(({ id }) => id !== spare!.id),
      strips: [{ mould, stripStart, stripEnd, pieceReadyAt: spare!.pieceReadyAt }],
    },
    yard: { ...current.yard, inMould: [{ mould, casting, filledAt: fillEnd }] },
  };
  expect(await sparesOfPlan(context, poured)).toMatchObject([{ casting, pour: null, on: stripEnd.slice(0, 10) }]);
  expect(await textOf(await get('/orders/27-001'))).toContain('One to spare: Panel 900, out of its mould');
  expect(await textOf(await get('/orders/27-001?sure=yes'))).toMatch(
    /enough are good 8 in 10\. One to spare comes out Sat/,
  );
  expect(await textOf(await get('/how-sure?what=kit:pair&number=6'))).toContain(
    '12 of Panel 900 poured are all good 1 in 2, of 13 enough are 8 in 10',
  );
  // On the morning of the session in which it is poured it is told where the maker looks: on the page and on both sheets.
  const morning = screensOn(context.database, `${spare!.fillStart.slice(0, 10)}T06:00:00+01:00`);
  for (const path of ['/today', '/today/sheet', '/today/evening'])
    expect(await textOf(await morning.get(path)), path).toMatch(/One to spare: Panel 900 in 900 no\. \d\./);
  const { other } = await archived(context);
  expect(await other.database.read(habitsOfYard)).toMatchObject({ spares: 'always' });
});

test('once enough is on record the plan has one by itself, where the record says that it pays', async () => {
  const context = await yardContext(smallYard({ orders: TWELVE }));
  const oneInTen = { mould: '900 no. 1', casting: 'panel-900', every: 10 };
  await context.database.write((tx) => addWorkRecords(tx, stripsBefore('2027-04-08', oneInTen)));
  expect(await spareOf(context)).toMatchObject({ free: [{ casting: 'panel-900' }], told: [{ name: 'Panel 900' }] });
});
