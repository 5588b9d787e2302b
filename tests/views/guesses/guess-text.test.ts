import { describe, expect, test } from 'vitest';
import type { GuessGroup } from '../../../src/usecases/yard/show-guesses.ts';
import { guessEdits, guessValue, guessWords, inGuessOrder } from '../../../views/guesses/guess-text.ts';

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

  test('leads to where it is changed: to each of a few things, or to all of many', () => {
    const paths = (...figure: Parameters<typeof group>) => guessEdits(group(...figure)).map(({ path }) => path);
    expect(paths('yard', 'temperatures', '20 °C')).toEqual(['/yard/temperatures']);
    expect(paths('mix', 'cureHours', '72 hours')).toEqual(['/yard/mixes/0']);
    expect(guessEdits(group('casting', 'kg', '18 kg', '9 kg'))).toEqual([
      { text: 'Change it for Panel 0', path: '/yard/panels/0' },
      { text: 'Panel 1', path: '/yard/panels/1' },
    ]);
    expect(paths('material', 'onHand', ...Array<string>(7).fill('3 bags'))).toEqual(['/yard/stock']);
  });
});
