import { expect, test } from 'vitest';
import { largeSteps } from '../../../src/usecases/files/file-checks.ts';

const sand = { id: 'sand', name: 'Sand', unit: 'kg', onHand: 0.012, pack: 25, minimum: 0, unitPrice: 0.95 };
type Materials = Parameters<typeof largeSteps>[0]['materials'];
const steps = (changes: Partial<typeof sand>) =>
  largeSteps(
    { materials: [sand] as unknown as Materials },
    { materials: [{ ...sand, ...changes }] as unknown as Materials },
  );

test('a figure that is ten times what it was, or a tenth of it, is asked about', () => {
  expect(steps({ onHand: 12 })).toEqual([{ name: 'Sand', figure: 'in the yard', from: 0.012, to: 12 }]);
  expect(steps({ unitPrice: 9.5, pack: 2.5 }).map(({ figure }) => figure)).toEqual(['pack', 'price']);
  expect(steps({ onHand: 0.1199, unitPrice: 0.1 })).toEqual([]);
});

test('none, or some where there was none, is no slip of a decimal sign', () => {
  expect(steps({ onHand: 0, minimum: 40 })).toEqual([]);
});
