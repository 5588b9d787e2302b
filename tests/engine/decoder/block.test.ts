import { expect, test } from 'vitest';
import { inBlock } from '../../../src/engine/decoder/block.ts';

test('the arrays become views of one block, in turn, with what was in them', () => {
  const [a, b] = [
    { x: Int32Array.of(1, 2), name: 'a' },
    { y: Int32Array.of(3), z: Int32Array.of(4, 5) },
  ];
  const block = inBlock([a, b]);
  expect([...block]).toEqual([1, 2, 3, 4, 5]);
  a.x[1] = 9;
  b.z.fill(7);
  expect([...block]).toEqual([1, 9, 3, 7, 7]);
  expect(a.name).toBe('a');
});

test('only those named', () => {
  const owner = { x: Int32Array.of(1), y: Int32Array.of(2) };
  const block = inBlock([owner], new Set(['y']));
  owner.x[0] = 8;
  owner.y[0] = 9;
  expect([...block]).toEqual([9]);
});
