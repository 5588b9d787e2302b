import { expect, test } from 'vitest';
import { addGuesses, guessesOfYard } from '../../../db/stores/figure-store.ts';
import { undoChange } from '../../../src/usecases/changes/undo-change.ts';
import { confirmGuess } from '../../../src/usecases/yard/confirm-guess.ts';
import { doneOf, refusalOf } from '../../support/outcomes.ts';
import { yardContext } from '../../support/yard-context.ts';

const guessing = async () => {
  const context = await yardContext();
  await context.database.write((tx) =>
    addGuesses(tx, [
      { kind: 'casting', id: 'panel-900', figure: 'kg' },
      { kind: 'casting', id: 'panel-600', figure: 'kg' },
      { kind: 'casting', id: 'panel-900', figure: 'fillMinutes' },
      { kind: 'mix', id: 'thin', figure: 'kg' },
    ]),
  );
  const left = async () =>
    (await context.database.read(guessesOfYard)).map((x) => `${x.kind} ${x.id} ${x.figure}`).sort();
  return { context, left };
};

test('a figure is right wherever it is guessed, and no other is', async () => {
  const { context, left } = await guessing();
  expect(doneOf(await confirmGuess(context, { kind: 'casting', figure: 'kg' })).words).toBe('2 figures confirmed');
  expect(await left()).toEqual(['casting panel-900 fillMinutes', 'mix thin kg']);
  expect(doneOf(await confirmGuess(context, { kind: 'mix', figure: 'kg' })).words).toBe('A figure confirmed');
});

test('undone, it is a guess again', async () => {
  const { context, left } = await guessing();
  const before = await left();
  doneOf(await undoChange(context, doneOf(await confirmGuess(context, { kind: 'casting', figure: 'kg' })).change));
  expect(await left()).toEqual(before);
});

test('what is no guess is refused', async () => {
  const { context, left } = await guessing();
  expect(refusalOf(await confirmGuess(context, { kind: 'casting', figure: 'stripMinutes' }))).toBe(
    'figure: That is no figure to check any more. Nothing was changed.',
  );
  expect(await left()).toHaveLength(4);
});
