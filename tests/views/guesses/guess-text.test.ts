import { describe, expect, test } from 'vitest';
import type { GuessGroup } from '../../../src/usecases/show-guesses.ts';
import { guessEditPath, guessValue, guessWords, inGuessOrder } from '../../../views/guesses/guess-text.ts';

const group = (kind: GuessGroup['kind'], figure: string, ...texts: string[]): GuessGroup => ({
  ...{ kind, figure, values: texts.map((text, index) => ({ id: String(index), name: `Panel ${index}`, text })) },
});

describe('a guess in words', () => {
  test('says the value once where all are alike', () => {
    expect(guessValue(group('casting', 'stripMinutes', '8 minutes', '8 minutes'))).toBe('8 minutes');
    expect(guessValue(group('casting', 'kg', '18 kg', '9 kg'))).toBe('18 kg for Panel 0, 9 kg for Panel 1');
  });

  test('of a figure that has no words yet names whose it is', () => {
    expect(guessWords(group('mix', 'bagStep', '1'))).toBe('A figure of Panel 0');
  });

  test('stands with the bags and the mix first, and one without words last', () => {
    const all = [
      group('mould', 'odd'),
      group('casting', 'kg'),
      group('material', 'onHand'),
      group('mix', 'yieldKgPerBag'),
    ];
    expect(inGuessOrder(all).map(({ figure }) => figure)).toEqual(['yieldKgPerBag', 'onHand', 'kg', 'odd']);
  });

  test('leads to where it is changed', () => {
    expect(guessEditPath(group('yard', 'temperatures', '20 °C'))).toBe('/yard/temperatures');
    expect(guessEditPath(group('material', 'onHand', '3 bags', '4 bags'))).toBe('/yard/stock');
    expect(guessEditPath(group('mix', 'cureHours', '72 hours'))).toBe('/yard/mixes/0');
  });
});
