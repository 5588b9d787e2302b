import { expect, test } from 'vitest';
import { faultText, pathText } from '../../shared/fault.ts';

test.each([
  [['moulds', 3, 'setFor'], 'moulds[3].setFor'],
  [['keep', 'pours', 0], 'keep.pours[0]'],
  [['yard'], 'yard'],
  [[0, 'id'], '[0].id'],
  [[], 'file'],
])('%j is written %s', (path, text) => expect(pathText(path)).toBe(text));

test('a fault is one line that starts with its path', () => {
  expect(faultText({ path: 'moulds[3].setFor', message: 'no casting named "x"' })).toBe(
    'moulds[3].setFor: no casting named "x"',
  );
});
