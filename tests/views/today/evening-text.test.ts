import { describe, expect, test } from 'vitest';
import type { StickFacts } from '../../../src/usecases/today/cut-list.ts';
import type { EveningFacts } from '../../../src/usecases/today/evening-facts.ts';
import type { BatchStep, CoatStep, PrepStep } from '../../../src/usecases/today/session-step.ts';
import { dryLines, eveningAnswer, fittingLines, stickLine, weighLines } from '../../../views/today/evening-text.ts';

const at = (clock: string) => `2027-04-10T${clock}:00+01:00`;
const acid = { name: 'Citric acid', unit: 'g', quantity: 57, measured: '57 g' };
const sachet = { name: 'Plasticiser', unit: 'sachet', quantity: 1, measured: null };
const pour = { casting: 'panel-900', piece: 'Panel 900' };
const batch = (changes: Partial<BatchStep> = {}): BatchStep =>
  ({
    ...{ kind: 'batch', mix: 'Thin panel mix', bags: 1, water: '4.7 l', ingredients: [acid, sachet] },
    ...{ pours: [pour, pour], ...changes },
  }) as BatchStep;
const coat = { kind: 'coat', mould: '900 no. 2', until: at('08:33'), dryFrom: at('08:53') } as CoatStep;
const prep = {
  ...{ kind: 'prep', mould: '900 no. 2', casting: 'panel-900', at: at('08:53') },
  fittings: [{ name: 'Mesh', unit: 'm2', quantity: 0.16 }],
} as unknown as PrepStep;
const sticks: StickFacts[] = [
  {
    ...{ left: { mm: 1164, length: '1164 mm', isKept: true }, bar: { mm: 3000, kerfMm: 2, cuts: [] } },
    name: 'Pipe',
    length: '3000 mm',
    whole: true,
    cuts: [
      { length: '300 mm', count: 1 },
      { length: '190 mm', count: 8 },
    ],
  },
  {
    ...{ left: null, bar: { mm: 635, kerfMm: 2, cuts: [] } },
    ...{ name: 'Pipe', length: '635 mm', whole: false, cuts: [{ length: '190 mm', count: 2 }] },
  },
];
const evening = (changes: Partial<EveningFacts> = {}): EveningFacts => ({
  session: { date: '2027-04-10', start: at('08:00'), end: at('12:00'), windows: [] },
  ...{ sticks, meshes: [], recipes: [], coats: [coat], preps: [prep] },
  ...{ spares: [], steps: [coat, prep, batch(), batch()] },
  ...changes,
});

test('the first line says what there is to do', () => {
  expect(eveningAnswer(evening())).toBe(
    'Before Saturday: cut 11 lengths, weigh out for 2 mixes, coat 1 mould and set up 1 mould.',
  );
  expect(eveningAnswer(evening({ sticks: [], coats: [], preps: [], steps: [] }))).toBe(
    'Before Saturday: nothing to get ready.',
  );
});

test('sticks say what each is cut into', () => {
  expect(sticks.map(stickLine)).toEqual([
    'Pipe, a whole one: 1 × 300 mm and 8 × 190 mm; keep 1164 mm',
    'Pipe, an offcut of 635 mm: 2 × 190 mm',
  ]);
  const over = { ...sticks[1]!, left: { mm: 45, length: '45 mm', isKept: false } };
  expect(stickLine(over)).toBe('Pipe, an offcut of 635 mm: 2 × 190 mm; 45 mm is over');
});

describe('what is weighed', () => {
  test('stands once for mixes that are alike, and for a bag more by itself', () => {
    const two = batch({ bags: 2, water: '9.4 l', ingredients: [{ ...acid, measured: '115 g' }] });
    expect(weighLines({ steps: [batch(), two, batch()] })).toEqual([
      '2 mixes of Thin panel mix, 1 bag each: 4.7 l of water and 57 g of Citric acid',
      '1 mix of Thin panel mix, 2 bags: 9.4 l of water and 115 g of Citric acid',
    ]);
  });

  test('leaves out a mix of which nothing is', () => {
    expect(weighLines({ steps: [batch({ water: null, ingredients: [sachet] })] })).toEqual([]);
  });
});

test('mesh is counted by the pieces that take it', () => {
  expect(fittingLines(evening())).toEqual(['0.16 m² of Mesh for each of 4 × Panel 900']);
  expect(fittingLines({ steps: [prep] })).toEqual([]);
});

test('a coat says how long it dries, and when the mould is set up', () => {
  expect(dryLines(evening())).toEqual(['900 no. 2: its coat dries for 20 min; it is set up at 8:55']);
  expect(dryLines(evening({ steps: [coat] }))).toEqual(['900 no. 2: its coat dries for 20 min']);
});
