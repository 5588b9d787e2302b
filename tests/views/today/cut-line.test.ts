import { expect, test } from 'vitest';
import { CutLine } from '../../../views/today/cut-line.tsx';

const drawn = (folded: boolean) => String(CutLine({ line: 'Pipe: 3 × 190 mm', folded, children: 'a drawing' }));

test('a drawing waits behind its line on a page, and is there on paper', () => {
  expect(drawn(true)).toMatch(/<details><summary>Pipe: 3 × 190 mm .*<\/summary>a drawing<\/details>/);
  expect(drawn(false)).toMatch(/<span>Pipe: 3 × 190 mm<\/span>a drawing<\/li>$/);
});
