import { describe, expect, test } from 'vitest';
import { changeById } from '../../../db/stores/change-store.ts';
import { finishedPieces } from '../../../db/stores/finished-store.ts';
import { mouldById } from '../../../db/stores/mould-store.ts';
import { piecesToMend } from '../../../db/stores/piece-to-mend-store.ts';
import { loadYardFile } from '../../../db/stores/yard-store.ts';
import { undoChange } from '../../../src/usecases/changes/undo-change.ts';
import { markMould } from '../../../src/usecases/moulds/mark-mould.ts';
import { currentPlan } from '../../../src/usecases/plan/make-plan.ts';
import { giveUpLateWork } from '../../../src/usecases/today/give-up-late-work.ts';
import { mendPiece } from '../../../src/usecases/today/mend-piece.ts';
import { recordStrip } from '../../../src/usecases/today/record-strip.ts';
import { scrapPiece } from '../../../src/usecases/today/scrap-piece.ts';
import { plannedYard, saturday } from '../../support/planned-yard.ts';
import { yardContext } from '../../support/yard-context.ts';

/** Poured at 9:00 for the order, which has its other panel; 72 hours to cure. */
const poured = async () => {
  const base = plannedYard();
  const { database } = await yardContext(
    plannedYard({
      yard: { ...base.yard, now: saturday('10:30') },
      mixes: [{ ...base.mixes[0]!, cureHours: 72 }],
      inMould: [{ mould: '900 no. 1', casting: 'panel-900', filledAt: saturday('09:00'), order: '27-001' }],
    }),
  );
  const at = (now: string) => ({ database, now });
  const strip = async (cameOut: 'mend' | 'scrap', reason = '') => {
    const outcome = await recordStrip(at(saturday('10:30')), { mould: '900 no. 1', cameOut, reason });
    if (!outcome.ok) throw new Error(outcome.faults[0]?.message);
    return outcome.value;
  };
  const aside = () => database.read(piecesToMend);
  const finished = () => database.read(finishedPieces);
  const orderOfPours = async (now: string) => (await currentPlan(at(now))).plan.pours.map(({ order }) => order);
  return { database, at, strip, aside, finished, orderOfPours };
};
const idOf = (pieces: { id: number }[]): number => pieces[0]?.id ?? 0;
const faultOf = (outcome: { ok: true } | { ok: false; faults: unknown[] }) => (outcome.ok ? null : outcome.faults[0]);

describe('a piece that came out and can be patched', () => {
  test('is kept aside, counts for nothing, and another is planned', async () => {
    const { database, strip, aside, finished } = await poured();
    const { words, plan, change } = await strip('mend', 'corner broken off');
    expect(words).toBe('900 no. 1 stripped, the piece is to be mended: corner broken off');
    expect((await database.read((tx) => changeById(tx, change)))?.words).toBe(words);
    expect(await aside()).toMatchObject([
      {
        ...{ casting: 'panel-900', mould: '900 no. 1', reason: 'corner broken off' },
        ...{ filledAt: saturday('09:00'), strippedAt: saturday('10:30') },
      },
    ]);
    expect(await finished()).toHaveLength(1);
    expect((await database.read((tx) => loadYardFile(tx, saturday('10:30')))).finished).toHaveLength(1);
    expect(plan.pours.map(({ order }) => order)).toEqual(['27-001']);
    expect(await database.read((tx) => mouldById(tx, '900 no. 1'))).toMatchObject({ piece: null, condition: 'dirty' });
  });

  test('is a finished piece once it is mended, its cure counted from its pour, and nothing is poured instead', async () => {
    const { at, strip, aside, finished, orderOfPours } = await poured();
    await strip('mend');
    // Another was planned for it on Saturday, which nobody poured.
    await giveUpLateWork(at('2027-04-12T09:00:00+01:00'), { step: null, session: null });
    const outcome = await mendPiece(at('2027-04-12T09:00:00+01:00'), idOf(await aside()), { fitFrom: null });
    expect(outcome).toMatchObject({
      ok: true,
      value: { words: 'Panel 900 from 900 no. 1 mended, fit to go out from Tue 13 Apr' },
    });
    expect(await aside()).toEqual([]);
    expect((await finished())[1]).toMatchObject({
      ...{ casting: 'panel-900', count: 1, order: null, readyAt: '2027-04-13T09:00:00+01:00' },
    });
    expect(await orderOfPours('2027-04-12T09:00:00+01:00')).toEqual([]);
  });

  test('is fit to go out at once where it has cured meanwhile', async () => {
    const { at, strip, aside, finished } = await poured();
    await strip('mend');
    const outcome = await mendPiece(at('2027-04-14T09:00:00+01:00'), idOf(await aside()), { fitFrom: null });
    expect(outcome).toMatchObject({ ok: true, value: { words: 'Panel 900 from 900 no. 1 mended' } });
    expect((await finished())[1]?.readyAt).toBeNull();
  });

  test('may go out only from a later day that is named', async () => {
    const { at, strip, aside, finished } = await poured();
    await strip('mend');
    await mendPiece(at('2027-04-12T09:00:00+01:00'), idOf(await aside()), { fitFrom: '2027-04-16' });
    expect((await finished())[1]?.readyAt).toBe('2027-04-16T00:00:00+01:00');
  });

  test.each([
    ['2027-04-12T09:00:00+01:00', '2027-04-12', 'It has not cured before Tue 13 Apr. Leave this empty for that day.'],
    ['2027-04-14T09:00:00+01:00', '2027-04-13', 'That day has passed. Leave this empty: it has cured.'],
  ])('at %s is not fit from %s', async (now, fitFrom, message) => {
    const { at, strip, aside } = await poured();
    await strip('mend');
    expect(faultOf(await mendPiece(at(now), idOf(await aside()), { fitFrom }))).toEqual({ path: 'fitFrom', message });
    expect(await aside()).toHaveLength(1);
  });

  test('is scrapped after all without a change to the plan', async () => {
    const { at, strip, aside, finished } = await poured();
    const { plan } = await strip('mend', 'crack');
    const outcome = await scrapPiece(at(saturday('11:00')), idOf(await aside()));
    expect(outcome).toMatchObject({ ok: true, value: { words: 'Panel 900 from 900 no. 1 scrapped', moved: [] } });
    expect(outcome.ok && outcome.value.plan).toEqual(plan);
    expect(await aside()).toEqual([]);
    expect(await finished()).toHaveLength(1);
  });

  test('is mended or scrapped once only', async () => {
    const { at, strip, aside } = await poured();
    await strip('mend');
    const id = idOf(await aside());
    await scrapPiece(at(saturday('11:00')), id);
    for (const outcome of [
      await scrapPiece(at(saturday('11:05')), id),
      await mendPiece(at(saturday('11:05')), id, { fitFrom: null }),
    ])
      expect(faultOf(outcome)).toMatchObject({
        ...{ path: 'piece', message: 'That piece is not waiting to be mended any more. Nothing was changed.' },
      });
  });

  test('every step of it can be undone', async () => {
    const { database, at, strip, aside, finished } = await poured();
    const stripped = await strip('mend', 'crack');
    const before = await aside();
    for (const act of [
      (id: number) => mendPiece(at(saturday('11:00')), id, { fitFrom: null }),
      (id: number) => scrapPiece(at(saturday('11:00')), id),
    ]) {
      const outcome = await act(idOf(before));
      if (!outcome.ok) throw new Error('refused');
      expect(await aside()).toEqual([]);
      expect((await undoChange(at(saturday('11:05')), outcome.value.change)).ok).toBe(true);
      expect(await aside()).toEqual(before);
      expect(await finished()).toHaveLength(1);
    }
    expect((await undoChange(at(saturday('11:10')), stripped.change)).ok).toBe(true);
    expect(await aside()).toEqual([]);
    expect((await database.read((tx) => mouldById(tx, '900 no. 1')))?.piece).toMatchObject({ order: '27-001' });
  });

  test('comes out of a mould that is marked damaged, too', async () => {
    const { at, aside, database } = await poured();
    const details = { note: 'Split', repairedOn: null, cameOut: 'mend' } as const;
    expect((await markMould(at(saturday('10:30')), '900 no. 1', 'damaged', details)).ok).toBe(true);
    expect(await aside()).toMatchObject([{ mould: '900 no. 1', filledAt: saturday('09:00'), reason: null }]);
    expect((await database.read((tx) => mouldById(tx, '900 no. 1')))?.piece).toBeNull();
  });
});

test('a piece that is scrapped at once is kept nowhere', async () => {
  const { strip, aside, finished, orderOfPours } = await poured();
  expect((await strip('scrap', 'honeycomb')).words).toBe('900 no. 1 stripped, the piece is scrapped: honeycomb');
  expect(await aside()).toEqual([]);
  expect(await finished()).toHaveLength(1);
  expect(await orderOfPours(saturday('10:30'))).toEqual(['27-001']);
});
