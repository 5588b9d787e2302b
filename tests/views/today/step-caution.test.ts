import { expect, test } from 'vitest';
import type { SessionStep } from '../../../src/usecases/today/session-step.ts';
import { stepCautions } from '../../../views/today/step-caution.tsx';

const cautions = (step: object): string => stepCautions(step as SessionStep).join(' ');

test('what can hurt stands at the step where the hand is', () => {
  const plain = cautions({ kind: 'batch', ingredients: [{ name: 'Mortar' }] });
  expect(plain).toMatch(/Mask.*Goggles.*Rinse skin at once.*residual-current device.*drains/);
  expect(plain).not.toContain('Acid');
  expect(cautions({ kind: 'batch', ingredients: [{ name: 'Citric acid' }] })).toContain(
    'goggles on before it is opened',
  );
  expect(cautions({ kind: 'strip' })).toMatch(/topples.*nobody stands on the falling side/);
  expect(cautions({ kind: 'pack' })).toMatch(/Strap the load\. Cap pin ends/);
  expect(cautions({ kind: 'coat' })).toContain('spread them flat outside');
  const prep = { kind: 'prep', fittings: [] };
  expect(cautions({ ...prep, cuts: [{}] })).toMatch(/nothing swept dry.*Galvanised rod.*Cap wire ends/);
  expect(cautions({ ...prep, cuts: [] })).not.toContain('Goggles');
  expect(cautions({ kind: 'clear up' })).toBe('');
});

test('none of it promises anything, or names a product', () => {
  const all = ['batch', 'coat', 'prep', 'strip', 'pack'].map((kind) =>
    cautions({ kind, ingredients: [{ name: 'Acid' }], fittings: [{}], cuts: [{}] }),
  );
  expect(all.join(' ')).not.toMatch(/safe|guarantee|certif|proof|standard|®|™/i);
});
