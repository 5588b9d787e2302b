import { describe, expect, test } from 'vitest';
import { fitsYardFile, sayAt } from '../../../src/usecases/typed/fits-yard-file.ts';
import { smallYard } from '../../support/small-yard.ts';

const faultsOf = (outcome: ReturnType<typeof fitsYardFile>) => (outcome.ok ? [] : outcome.faults);

describe('a yard as it would be', () => {
  const yard = smallYard();
  const casting = yard.castings[0]!;

  test('has each fault at its field, in a sentence', () => {
    const heavy = { ...yard, castings: [{ ...casting, kg: 40, fillMinutes: 0 }] };
    expect(faultsOf(fitsYardFile(heavy, 'castings[0]'))).toEqual([
      { path: 'fillMinutes', message: 'Has to be at least 1.' },
      { path: 'kg', message: '40 kg is more than the largest batch of "thin" (27.5 kg).' },
    ]);
  });

  test('keeps the place of a fault in a list of the entry, and says it in other words where it has some', () => {
    const pieces = { ...yard, castings: [{ ...casting, mix: 'none', perPiece: [{ material: 'gone', quantity: -1 }] }] };
    const words = {
      'perPiece[].material': sayAt('material', 'Choose one from the list.'),
      mix: sayAt('mix', 'Choose a mix.'),
    };
    expect(faultsOf(fitsYardFile(pieces, 'castings[0]', words))).toEqual([
      { path: 'perPiece[0].quantity', message: 'Is negative.' },
      { path: 'material', message: 'Choose one from the list.' },
      { path: 'mix', message: 'Choose a mix.' },
    ]);
  });

  test('says what it breaks elsewhere', () => {
    const small = { ...yard, mixes: [{ ...yard.mixes[0]!, yieldKgPerBag: 10 }] };
    expect(faultsOf(fitsYardFile(small, 'mixes[0]'))).toEqual([
      { path: 'castings[0].kg', message: '13.6 kg is more than the largest batch of "thin" (10 kg).' },
    ]);
  });

  test('passes where a yard file may hold it, whatever was fixed before', () => {
    const batch = { id: 'b', mix: 'gone', start: '', mixEnd: '', end: '', bags: 1, kg: 1, pours: [] };
    expect(fitsYardFile({ ...yard, keep: { batches: [batch], pours: [] } }, 'yard')).toEqual({ ok: true, value: yard });
  });

  test('is not mistaken for its neighbour: moulds[1] is not moulds[10]', () => {
    const moulds = Array.from({ length: 11 }, (_, n) => ({ ...yard.moulds[0]!, id: `900 no. ${n}` }));
    const wrong = moulds.map((mould, n) => (n === 10 ? { ...mould, oilMinutes: -1 } : mould));
    expect(faultsOf(fitsYardFile({ ...yard, moulds: wrong }, 'moulds[1]'))).toEqual([
      { path: 'moulds[10].oilMinutes', message: 'Is negative.' },
    ]);
  });
});
