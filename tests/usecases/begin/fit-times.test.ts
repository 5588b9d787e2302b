import { expect, test } from 'vitest';
import { loadYardFile } from '../../../db/stores/yard-store.ts';
import { fitTimes, showFit } from '../../../src/usecases/begin/fit-times.ts';
import { undoChange } from '../../../src/usecases/changes/undo-change.ts';
import { doneOf, refusalOf } from '../../support/outcomes.ts';
import { smallYard } from '../../support/small-yard.ts';
import { yardContext } from '../../support/yard-context.ts';

const yardNow = async (context: Awaited<ReturnType<typeof yardContext>>) =>
  context.database.read((tx) => loadYardFile(tx, context.now));

test('a session that made fewer has longer times, and makes as many by them', async () => {
  const context = await yardContext();
  const before = await yardNow(context);
  const usual = (await showFit(context, null)).usual;
  expect(usual?.pieces).toBeGreaterThan(2);
  const fewer = usual!.pieces - 1;
  const shown = (await showFit(context, String(fewer))).fitted;
  const { words, value } = doneOf(await fitTimes(context, String(fewer)));
  expect(value.pieces).toBe(shown?.makes.pieces);
  expect(words).toBe(`Times changed so that a usual session makes ${value.pieces}`);
  const after = await yardNow(context);
  expect(after.castings[0]!.prepMinutes).toBeGreaterThan(before.castings[0]!.prepMinutes);
  expect(after.castings[0]!.prepMinutes).toBe(shown?.times.find(({ what }) => what === 'setUp')?.after[0]);
  expect((await showFit(context, null)).usual?.pieces).toBe(value.pieces);
});

test('undone, the times are as they were', async () => {
  const context = await yardContext();
  const before = await yardNow(context);
  const fewer = (await showFit(context, null)).usual!.pieces - 1;
  doneOf(await undoChange(context, doneOf(await fitTimes(context, String(fewer))).change));
  expect(await yardNow(context)).toEqual(before);
});

test.each(['', '0', 'many', '-2'])('%j is no number of pieces', async (made) => {
  expect(refusalOf(await fitTimes(await yardContext(), made))).toMatch(/^made: /);
});

test('what it makes already changes nothing, nor does a yard that can make nothing', async () => {
  const context = await yardContext();
  const { usual } = await showFit(context, null);
  expect(refusalOf(await fitTimes(context, String(usual?.pieces)))).toBe('made: Nothing has to be changed for that.');
  expect(refusalOf(await fitTimes(await yardContext(smallYard({ work: [] })), '5'))).toMatch(/^made: By these figures/);
});
