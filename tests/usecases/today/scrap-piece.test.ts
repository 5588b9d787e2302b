import { expect, test } from 'vitest';
import { undoChange } from '../../../src/usecases/changes/undo-change.ts';
import { scrapPiece } from '../../../src/usecases/today/scrap-piece.ts';
import { doneOf, refusalOf } from '../../support/outcomes.ts';
import { pieceAside } from '../../support/piece-aside.ts';
import { saturday } from '../../support/planned-yard.ts';

test('it is gone, and the plan, which did not count on it, stays as it was', async () => {
  const { id, at, plan, aside, finished } = await pieceAside();
  const scrapped = doneOf(await scrapPiece(at(saturday('11:00')), id));
  expect(scrapped).toMatchObject({ words: 'Panel 900 from 900 no. 1 scrapped', moved: [] });
  expect(scrapped.plan).toEqual(plan);
  expect(await aside()).toEqual([]);
  expect(await finished()).toEqual([]);
});

test('undone, it waits again; scrapped once more, it is refused', async () => {
  const { id, at, aside } = await pieceAside();
  const before = await aside();
  const now = at(saturday('11:00'));
  doneOf(await undoChange(now, doneOf(await scrapPiece(now, id)).change));
  expect(await aside()).toEqual(before);
  doneOf(await scrapPiece(now, id));
  expect(refusalOf(await scrapPiece(now, id))).toMatch(/^piece: That piece is not waiting/);
});
