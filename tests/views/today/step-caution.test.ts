import { expect, test } from 'vitest';
import type { SessionStep } from '../../../src/usecases/today/session-step.ts';
import { paperCautions, stepCautions } from '../../../views/today/step-caution.tsx';

const cautions = (step: object): string => stepCautions(step as SessionStep).join(' ');

test('what can hurt stands at the step where the hand is', () => {
  const plain = cautions({ kind: 'batch', ingredients: [{ name: 'Mortar' }] });
  expect(plain).toMatch(
    /Silica dust: mask.*Goggles.*Rinse skin at once.*residual-current device, no loose gloves.*drains.*never add water.*27\.5 kg/,
  );
  expect(plain).not.toContain('Acid');
  expect(cautions({ kind: 'batch', ingredients: [{ name: 'Citric acid' }] })).toContain(
    'goggles on before it is opened',
  );
  expect(cautions({ kind: 'strip' })).toMatch(/topples.*nobody stands on the falling side/);
  expect(cautions({ kind: 'pack' })).toMatch(/Strap the load\. Cap pin ends/);
  expect(cautions({ kind: 'coat' })).toContain('spread them flat outside');
  expect(cautions({ kind: 'coat' })).not.toContain('Silica');
  for (const kind of ['coat', 'prep'])
    expect(cautions({ kind, clean: true, cuts: [], fittings: [] })).toMatch(/Silica dust: moulds are scraped/);
  const lift = { name: 'Panel 1200', mass: '30 kg', lifting: 'two' };
  expect(cautions({ kind: 'strip', lift })).toMatch(
    /^Panel 1200 weighs 30 kg\. .*lift it with two\. \(HSE INDG143\.\)/,
  );
  expect(cautions({ kind: 'pack', heaviest: lift })).toMatch(/^The heaviest piece is Panel 1200 .*HSE INDG143/);
  const prep = { kind: 'prep', fittings: [] };
  expect(cautions({ ...prep, cuts: [{}] })).toMatch(
    /Hard mortar is cut wet and nothing swept dry.*silica.*Galvanised rod.*Cap wire ends/,
  );
  expect(cautions({ ...prep, cuts: [] })).not.toContain('Goggles');
  expect(cautions({ kind: 'clear up' })).toBe('');
});

test('on paper each thing is said once, with the hardest lift of all, and that strip times are planned ones', () => {
  const lift = (name: string, lifting: string) => ({ name, mass: '1 kg', lifting });
  const session = [
    { kind: 'prep', clean: true, cuts: [], fittings: [] },
    { kind: 'batch', ingredients: [] },
    { kind: 'batch', ingredients: [] },
    { kind: 'strip', lift: lift('Panel 600', 'one') },
    { kind: 'strip', lift: lift('Panel 1200', 'two') },
  ] as unknown as SessionStep[];
  const said = paperCautions(session);
  expect(said.map(({ head }) => head)).toEqual(['Mix', 'Coat, set up', 'Strip, load']);
  expect(said[2]?.words).toMatch(/^Planning time only: check the piece\. Panel 1200 weighs/);
  const all = said.map(({ words }) => words).join(' ');
  for (const once of ['mask on while you tip', 'scraped and wiped damp', 'topples'])
    expect(all.split(once)).toHaveLength(2);
  expect(all).not.toContain('Panel 600');
  expect(paperCautions([{ kind: 'clear up' } as SessionStep])).toEqual([]);
});

test('none of it promises anything, or names a product', () => {
  const all = ['batch', 'coat', 'prep', 'strip', 'pack'].map((kind) =>
    cautions({ kind, ingredients: [{ name: 'Acid' }], fittings: [{}], cuts: [{}] }),
  );
  expect(all.join(' ')).not.toMatch(/safe|guarantee|certif|proof|standard|®|™/i);
});
