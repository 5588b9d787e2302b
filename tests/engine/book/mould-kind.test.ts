import { expect, test } from 'vitest';
import { mouldKind, mouldsFor } from '../../../src/engine/book/mould-kind.ts';
import { plannedYard } from '../../support/planned-yard.ts';

test.each([
  ['1100 no. 2', '1100'],
  ['1100 No 12', '1100'],
  ['Edge post #3', 'Edge post'],
  ['1100', '1100'],
  ['no. 2', 'no. 2'],
  ['1100 no. 2 old', '1100 no. 2 old'],
])('%s is a %s', (id, kind) => {
  expect(mouldKind(id)).toBe(kind);
});

test('moulds for a piece make it, now or from a day that is set', () => {
  const yard = plannedYard();
  const [mould] = yard.moulds;
  const moulds = [
    { ...mould!, id: 'ready' },
    { ...mould!, id: 'mended by a day', condition: 'damaged' as const, repairedOn: '2027-04-17' },
    { ...mould!, id: 'damaged', condition: 'damaged' as const },
    { ...mould!, id: 'scrapped', condition: 'retired' as const },
    { ...mould!, id: 'of another piece', makes: [] },
  ];
  expect(mouldsFor({ ...yard, moulds }, 'panel-900').map(({ id }) => id)).toEqual(['ready', 'mended by a day']);
});
