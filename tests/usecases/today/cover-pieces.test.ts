import { expect, test } from 'vitest';
import { undoChange } from '../../../src/usecases/changes/undo-change.ts';
import type { UseCaseContext } from '../../../src/usecases/core/context.ts';
import { currentPlan } from '../../../src/usecases/plan/make-plan.ts';
import { coverPieces } from '../../../src/usecases/today/cover-pieces.ts';
import { showToday } from '../../../src/usecases/today/show-today.ts';
import { doneOf, refusalOf } from '../../support/outcomes.ts';
import { plannedYard, saturday } from '../../support/planned-yard.ts';
import { yardContext } from '../../support/yard-context.ts';

/** Both moulds were filled at nine, and somebody keeps them wet for an hour. */
const atTwentyPast = async () => {
  const base = plannedYard();
  const yard = plannedYard({
    yard: { ...base.yard, now: saturday('09:20') },
    mixes: base.mixes.map((mix) => ({ ...mix, attendMinutes: 60 })),
    inMould: [
      { mould: '900 no. 1', casting: 'panel-900', filledAt: saturday('09:00') },
      { mould: '900 no. 2', casting: 'panel-900', filledAt: saturday('09:05') },
    ],
  });
  return yardContext(yard);
};

const keysIn = async (context: UseCaseContext) => (await showToday(context)).setting.map(({ pieceKey }) => pieceKey);
const coveredIn = async (context: UseCaseContext) =>
  (await showToday(context)).setting.map(({ mould, coveredAt }) => [mould, coveredAt?.slice(11, 16) ?? null]);

test('pieces that are covered say since when, the plan stays as it is, and undone they say nothing', async () => {
  const context = await atTwentyPast();
  const before = (await currentPlan(context)).plan;
  const { words, change } = doneOf(await coverPieces(context, { pieces: await keysIn(context) }));
  expect(words).toBe('Covered and wet: 900 no. 1 and 900 no. 2');
  expect(await coveredIn(context)).toEqual([
    ['900 no. 1', '09:20'],
    ['900 no. 2', '09:20'],
  ]);
  expect((await currentPlan(context)).plan).toEqual(before);
  expect((await showToday(context)).done.map((one) => one.words)).toEqual([words]);
  doneOf(await undoChange(context, change));
  expect(await coveredIn(context)).toEqual([
    ['900 no. 1', null],
    ['900 no. 2', null],
  ]);
});

test('a tap that was sent later covers what nobody covered meanwhile, since the minute it was made', async () => {
  const context = await atTwentyPast();
  const [one = '', two = ''] = await keysIn(context);
  doneOf(await coverPieces(context, { pieces: [one], at: saturday('09:10') }));
  doneOf(await coverPieces(context, { pieces: [one, two], at: saturday('09:15') }));
  expect(await coveredIn(context)).toEqual([
    ['900 no. 1', '09:10'],
    ['900 no. 2', '09:15'],
  ]);
});

test('tapped twice it is one change; of a piece that is in no mould nothing is recorded', async () => {
  const context = await atTwentyPast();
  const pieces = await keysIn(context);
  const first = doneOf(await coverPieces(context, { pieces }));
  expect(doneOf(await coverPieces(context, { pieces })).change).toBe(first.change);
  expect(refusalOf(await coverPieces(context, { pieces: ['piece 1 none'] }))).toContain('not in their moulds any more');
});
