import { expect, test } from 'vitest';
import { finishedPieces } from '../../../db/stores/finished-store.ts';
import { mouldById } from '../../../db/stores/mould-store.ts';
import { undoChange } from '../../../src/usecases/changes/undo-change.ts';
import { recordStrip } from '../../../src/usecases/today/record-strip.ts';
import { doneOf, refusalOf } from '../../support/outcomes.ts';
import { plannedYard, saturday } from '../../support/planned-yard.ts';
import { yardContext } from '../../support/yard-context.ts';

/** Poured at 9:00 on Saturday, with so many hours to cure; it is 10:30. */
const poured = async (cureHours = 72) => {
  const base = plannedYard();
  const { database } = await yardContext(
    plannedYard({
      yard: { ...base.yard, now: saturday('10:30') },
      mixes: [{ ...base.mixes[0]!, cureHours }],
      finished: [],
      inMould: [{ mould: '900 no. 1', casting: 'panel-900', filledAt: saturday('09:00'), order: '27-001' }],
    }),
  );
  const pieces = () => database.read(finishedPieces);
  const mould = () => database.read((tx) => mouldById(tx, '900 no. 1'));
  return { context: { database, now: saturday('10:30') }, pieces, mould };
};
const strip = (changes = {}) => ({ mould: '900 no. 1', cameOut: 'good' as const, reason: '', ...changes });

test('a good piece cures from its pour on for its order, and the mould is dirty', async () => {
  const { context, pieces, mould } = await poured();
  expect(doneOf(await recordStrip(context, strip())).words).toBe('900 no. 1 stripped');
  expect(await pieces()).toMatchObject([
    { casting: 'panel-900', order: '27-001', readyAt: '2027-04-13T09:00:00+01:00' },
  ]);
  expect(await mould()).toMatchObject({ piece: null, condition: 'dirty' });
});

test('of one that is scrapped nothing is left but the reason', async () => {
  const { context, pieces, mould } = await poured();
  const { words } = doneOf(await recordStrip(context, strip({ cameOut: 'scrap', reason: 'honeycomb' })));
  expect(words).toBe('900 no. 1 stripped, the piece is scrapped: honeycomb');
  expect(await pieces()).toEqual([]);
  expect(await mould()).toMatchObject({ piece: null });
});

test('undone, the piece is in its mould', async () => {
  const { context, pieces, mould } = await poured();
  const before = await mould();
  doneOf(await undoChange(context, doneOf(await recordStrip(context, strip())).change));
  expect(await mould()).toEqual(before);
  expect(await pieces()).toEqual([]);
});

test.each([
  [strip({ mould: '900 no. 2' }), /has no piece in it/],
  [strip({ mould: '900 no. 3' }), /There is no mould 900 no\. 3\./],
  [strip({ at: saturday('10:31') }), /^at: /],
  [strip({ at: saturday('08:59') }), /^at: 900 no. 1 was filled after that/],
])('%j is refused, and the piece stays', async (record, why) => {
  const { context, pieces, mould } = await poured();
  expect(refusalOf(await recordStrip(context, record))).toMatch(why);
  expect(await pieces()).toEqual([]);
  expect((await mould())?.piece).toMatchObject({ order: '27-001' });
});
