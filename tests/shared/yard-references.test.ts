import { describe, expect, test } from 'vitest';
import type { YardFileInput } from '../../shared/yard-file.ts';
import { referenceFaults } from '../../shared/yard-references.ts';
import { planYard } from '../../src/engine/plan.ts';
import { smallYard } from '../support/small-yard.ts';

const yard = smallYard({
  orders: [{ id: '27-001', lines: [{ kit: 'pair', quantity: 3 }] }],
  inMould: [{ mould: '900 no. 1', casting: 'panel-900', filledAt: '2027-04-03T11:00:00+01:00' }],
  finished: [{ casting: 'panel-900', count: 1 }],
  incoming: [{ material: 'mortar', quantity: 1, on: '2027-04-12' }],
  castings: [
    {
      ...smallYard().castings[0]!,
      perPiece: [{ material: 'mortar', quantity: 0.1 }],
      cuts: [{ material: 'rod', lengthMm: 100, count: 1 }],
    },
  ],
});
const plan = planYard(yard, { effort: 'quick' });
const whole = { ...yard, keep: { batches: plan.batches, pours: plan.pours } };
type Change = (yard: YardFileInput & { keep: NonNullable<YardFileInput['keep']> }) => unknown;

const faultsOf = (change: Change) => {
  const changed = structuredClone(whole) as Parameters<Change>[0];
  change(changed);
  return referenceFaults(changed).map((f) => `${f.path}: ${f.message}`);
};

test('the file it starts from has none, and keeps a batch', () => {
  expect(referenceFaults(whole)).toEqual([]);
  expect(plan.pours.length).toBeGreaterThan(0);
});

describe('what is not there', () => {
  test.each<[string, Change]>([
    ['incoming[0].material: no material named "x"', (y) => Object.assign(y.incoming[0]!, { material: 'x' })],
    [
      'mixes[0].perBag[0].material: no material named "x"',
      (y) => Object.assign(y.mixes[0]!.perBag[0]!, { material: 'x' }),
    ],
    ['castings[0].mix: no mix named "x"', (y) => Object.assign(y.castings[0]!, { mix: 'x' })],
    [
      'castings[0].perPiece[0].material: no material named "x"',
      (y) => Object.assign(y.castings[0]!.perPiece[0]!, { material: 'x' }),
    ],
    [
      'castings[0].cuts[0].material: no material named "x"',
      (y) => Object.assign(y.castings[0]!.cuts[0]!, { material: 'x' }),
    ],
    [
      'moulds[1].makes[0].casting: no casting named "x"',
      (y) => Object.assign(y.moulds[1]!.makes[0]!, { casting: 'x' }),
    ],
    ['moulds[1].setFor: no casting named "x"', (y) => Object.assign(y.moulds[1]!, { setFor: 'x' })],
    ['kits[0].pieces[0].casting: no casting named "x"', (y) => Object.assign(y.kits[0]!.pieces[0]!, { casting: 'x' })],
    ['kits[0].parts[0].material: no material named "x"', (y) => y.kits[0]!.parts.push({ material: 'x', quantity: 1 })],
    ['kits[0].cuts[0].material: no material named "x"', (y) => Object.assign(y.kits[0]!.cuts[0]!, { material: 'x' })],
    ['finished[0].casting: no casting named "x"', (y) => Object.assign(y.finished[0]!, { casting: 'x' })],
    ['finished[0].order: no order named "x"', (y) => Object.assign(y.finished[0]!, { order: 'x' })],
    ['inMould[0].mould: no mould named "x"', (y) => Object.assign(y.inMould[0]!, { mould: 'x' })],
    ['inMould[0].casting: no casting named "x"', (y) => Object.assign(y.inMould[0]!, { casting: 'x' })],
    ['inMould[0].order: no order named "x"', (y) => Object.assign(y.inMould[0]!, { order: 'x' })],
    ['orders[0].lines[0].kit: no kit named "x"', (y) => Object.assign(y.orders[0]!.lines[0]!, { kit: 'x' })],
    [
      'orders[0].lines[0].casting: no casting named "x"',
      (y) => Object.assign(y.orders[0]!.lines[0]!, { casting: 'x' }),
    ],
    [
      'orders[0].lines[0].material: no material named "x"',
      (y) => Object.assign(y.orders[0]!.lines[0]!, { material: 'x' }),
    ],
    ['keep.batches[0].mix: no mix named "x"', (y) => Object.assign(y.keep.batches[0]!, { mix: 'x' })],
    [
      `keep.batches[0].pours[${plan.batches[0]!.pours.length}]: no pour named "x"`,
      (y) => y.keep.batches[0]!.pours.push('x'),
    ],
    ['keep.pours[0].batch: no batch named "x"', (y) => Object.assign(y.keep.pours[0]!, { batch: 'x' })],
    ['keep.pours[0].mould: no mould named "x"', (y) => Object.assign(y.keep.pours[0]!, { mould: 'x' })],
    ['keep.pours[0].casting: no casting named "x"', (y) => Object.assign(y.keep.pours[0]!, { casting: 'x' })],
    ['keep.pours[0].order: no order named "x"', (y) => Object.assign(y.keep.pours[0]!, { order: 'x' })],
  ])('%s', (fault, change) => expect(faultsOf(change)).toContain(fault));
});

describe('what is there twice', () => {
  test.each<['materials' | 'mixes' | 'castings' | 'moulds' | 'kits' | 'orders', string]>([
    ['materials', 'mortar'],
    ['mixes', 'thin'],
    ['castings', 'panel-900'],
    ['moulds', '900 no. 1'],
    ['kits', 'pair'],
    ['orders', '27-001'],
  ])('an id among %s', (list, id) => {
    const faults = faultsOf((y) => (y[list] as { id: string }[]).push({ ...y[list][0]! }));
    expect(faults).toEqual([`${list}[${whole[list].length}].id: "${id}" is given twice`]);
  });

  test('a mould among the filled ones, a casting among what a mould makes, a fixed batch', () => {
    expect(faultsOf((y) => y.inMould.push(y.inMould[0]!))).toEqual([
      'inMould[1].mould: "900 no. 1" is in this list twice',
    ]);
    expect(faultsOf((y) => y.moulds[0]!.makes.push({ casting: 'panel-900' }))).toEqual([
      'moulds[0].makes[1].casting: "panel-900" is given twice',
    ]);
    expect(faultsOf((y) => y.keep.batches.push(y.keep.batches[0]!))).toEqual([
      `keep.batches[${plan.batches.length}].id: "${plan.batches[0]!.id}" is given twice`,
    ]);
  });
});

describe('what does not go together', () => {
  const addLong: Change = (y) => y.castings.push({ ...y.castings[0]!, id: 'long' });
  test.each<[string, Change]>([
    [
      'mixes[0].maxBags: 1.25 is no multiple of bagStep 0.5',
      (y) => Object.assign(y.mixes[0]!, { bagStep: 0.5, maxBags: 1.25 }),
    ],
    ['mixes[0].maxBags: 1.5 is no multiple of bagStep 1', (y) => Object.assign(y.mixes[0]!, { maxBags: 1.5 })],
    [
      'castings[0].kg: 27.6 kg is more than the largest batch of "thin" (27.5 kg)',
      (y) => Object.assign(y.castings[0]!, { kg: 27.6 }),
    ],
    [
      'castings[0].fillMinutes: 21 min is longer than the working time of "thin" (20 min)',
      (y) => Object.assign(y.castings[0]!, { fillMinutes: 21 }),
    ],
    [
      'kits[0].cuts[0].material: "mortar" has no stickMm to cut from',
      (y) => Object.assign(y.kits[0]!.cuts[0]!, { material: 'mortar' }),
    ],
    [
      'kits[0].cuts[0].lengthMm: 3001 mm is longer than a stick of "rod" (3000 mm)',
      (y) => Object.assign(y.kits[0]!.cuts[0]!, { lengthMm: 3001 }),
    ],
    [
      'moulds[1].setFor: "long" is not among what this mould makes',
      (y) => {
        addLong(y);
        Object.assign(y.moulds[1]!, { setFor: 'long' });
      },
    ],
    [
      'inMould[0].casting: mould "900 no. 1" does not make "long"',
      (y) => {
        addLong(y);
        Object.assign(y.inMould[0]!, { casting: 'long' });
      },
    ],
    [
      'inMould[0].filledAt: is after now',
      (y) => Object.assign(y.inMould[0]!, { filledAt: '2027-04-08T09:01:00+01:00' }),
    ],
  ])('%s', (fault, change) => expect(faultsOf(change)).toEqual([fault]));

  test.each<[string, Change]>([
    ['bags in tenths', (y) => Object.assign(y.mixes[0]!, { bagStep: 0.1, maxBags: 1.7 })],
    ['the largest batch in one piece', (y) => Object.assign(y.castings[0]!, { kg: 27.5 })],
    ['a fill as long as the working time', (y) => Object.assign(y.castings[0]!, { fillMinutes: 20 })],
    ['a whole stick', (y) => Object.assign(y.kits[0]!.cuts[0]!, { lengthMm: 3000 })],
    [
      'filled this very minute, by another clock',
      (y) => Object.assign(y.inMould[0]!, { filledAt: '2027-04-08T08:00:00Z' }),
    ],
    ['a damaged mould that holds a piece', (y) => Object.assign(y.moulds[0]!, { condition: 'damaged' })],
  ])('%s is no fault', (_, change) => expect(faultsOf(change)).toEqual([]));
});

test('what has no shape at all is left to the check of shapes', () => {
  for (const input of [null, 7, 'yard', [], {}, { moulds: 'none' }, { moulds: [3], keep: [] }])
    expect(referenceFaults(input)).toEqual([]);
});
