import { expect, test } from 'vitest';
import { undoChange } from '../../../src/usecases/changes/undo-change.ts';
import { mendPiece } from '../../../src/usecases/today/mend-piece.ts';
import { doneOf, refusalOf } from '../../support/outcomes.ts';
import { pieceAside } from '../../support/piece-aside.ts';

const MONDAY = '2027-04-12T09:00:00+01:00';
const WEDNESDAY = '2027-04-14T09:00:00+01:00';

test('it is a finished piece, fit by its cure, and the plan pours none in its place', async () => {
  const { id, at, plan, aside, finished } = await pieceAside();
  const { words, plan: after } = doneOf(await mendPiece(at(MONDAY), id, { fitFrom: null }));
  expect(words).toBe('Panel 900 from 900 no. 1 mended, fit to go out from Tue 13 Apr');
  expect(await aside()).toEqual([]);
  expect(await finished()).toMatchObject([{ count: 1, order: null, readyAt: '2027-04-13T09:00:00+01:00' }]);
  expect(after.pours.length).toBe(plan.pours.length - 1);
});

test('the day by which it has cured may be named; an earlier one is refused', async () => {
  const { id, at, aside, finished } = await pieceAside();
  expect(refusalOf(await mendPiece(at(MONDAY), id, { fitFrom: '2027-04-12' }))).toMatch(/^fitFrom: It has not cured/);
  expect(await aside()).toHaveLength(1);
  doneOf(await mendPiece(at(MONDAY), id, { fitFrom: '2027-04-13' }));
  expect(await finished()).toMatchObject([{ readyAt: '2027-04-13T09:00:00+01:00' }]);
});

test('undone, it waits again', async () => {
  const { id, at, aside, finished } = await pieceAside();
  const before = await aside();
  doneOf(await undoChange(at(WEDNESDAY), doneOf(await mendPiece(at(WEDNESDAY), id, { fitFrom: null })).change));
  expect(await aside()).toEqual(before);
  expect(await finished()).toEqual([]);
});

test('one that does not wait is refused', async () => {
  const { id, at, aside } = await pieceAside();
  expect(refusalOf(await mendPiece(at(MONDAY), id + 1, { fitFrom: null }))).toMatch(
    /^piece: That piece is not waiting/,
  );
  expect(await aside()).toHaveLength(1);
});
