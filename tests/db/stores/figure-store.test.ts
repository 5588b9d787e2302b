import { expect, test } from 'vitest';
import {
  addGuesses,
  dropAllFigures,
  dropFigures,
  dropGuess,
  guessesOfYard,
  setTyped,
  typedFiguresOf,
  typedOf,
} from '../../../db/stores/figure-store.ts';
import { habitsOfYard, isDemo, setDemo, setHabits } from '../../../db/stores/habits-store.ts';
import { replaceYard } from '../../../db/stores/replace-yard.ts';
import { fixedHours, setFixedHours } from '../../../db/stores/yard-store.ts';
import { smallYard } from '../../support/small-yard.ts';
import { temporaryDatabase } from '../../support/temporary-database.ts';

const kg = { kind: 'casting', id: 'panel-900', figure: 'kg' } as const;
const rate = { kind: 'mix', id: 'rapid', figure: 'activationKelvin' } as const;

test('a guess stays one until it is confirmed, however often it is put down', async () => {
  const database = await temporaryDatabase();
  await database.write(async (tx) => {
    await addGuesses(tx, [kg, rate]);
    await addGuesses(tx, [kg]);
    await addGuesses(tx, []);
    expect(await guessesOfYard(tx)).toEqual([kg, rate]);
    await dropGuess(tx, kg);
    expect(await guessesOfYard(tx)).toEqual([rate]);
  });
});

test('what was typed is kept by owner, replaced, and forgotten', async () => {
  const database = await temporaryDatabase();
  await database.write(async (tx) => {
    await setTyped(tx, kg, '71 lb');
    await setTyped(tx, kg, '72 lb');
    await setTyped(tx, rate, '5000');
    expect(await typedOf(tx, kg)).toEqual({ kg: '72 lb' });
    expect(await typedFiguresOf(tx, 'casting')).toEqual(new Map([['panel-900 kg', '72 lb']]));
    await setTyped(tx, kg, null);
    expect(await typedOf(tx, kg)).toEqual({});
    await addGuesses(tx, [rate]);
    await dropFigures(tx, rate);
    expect(await typedOf(tx, rate)).toEqual({});
    expect(await guessesOfYard(tx)).toEqual([]);
    await addGuesses(tx, [kg]);
    await dropAllFigures(tx);
    expect(await guessesOfYard(tx)).toEqual([]);
  });
});

test('another yard keeps the habits, and is neither the demo nor guessed at', async () => {
  const database = await temporaryDatabase();
  await database.write(async (tx) => {
    expect(await habitsOfYard(tx)).toEqual({ currency: 'EUR', weekStart: 'MO', floatDays: 1 });
    await replaceYard(tx, smallYard());
    await setHabits(tx, { currency: 'USD', weekStart: 'SU' });
    await setDemo(tx, true);
    await addGuesses(tx, [kg]);
    await setFixedHours(tx, 48);
    await replaceYard(tx, smallYard());
    expect(await habitsOfYard(tx)).toEqual({ currency: 'USD', weekStart: 'SU', floatDays: 1 });
    expect(await isDemo(tx)).toBe(false);
    expect(await guessesOfYard(tx)).toEqual([]);
    expect(await fixedHours(tx)).toBe(48);
  });
});
