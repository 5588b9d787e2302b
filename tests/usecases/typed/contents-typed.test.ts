import { describe, expect, test } from 'vitest';
import type { UnitSystem } from '../../../shared/units.ts';
import {
  type ContentsWriting,
  contentsTexts,
  contentsWords,
  cutsTyped,
  MOST_CONTENTS,
  partsTyped,
} from '../../../src/usecases/typed/contents-typed.ts';
import { ShownReader } from '../../../src/usecases/typed/shown-reader.ts';
import { smallYard } from '../../support/small-yard.ts';

const { materials } = smallYard({
  materials: [...smallYard().materials, { id: 'fibre', name: 'Fibre', unit: 'g', onHand: 500 }],
});
const writing = (system: UnitSystem = 'metric', typed = {}): ContentsWriting => ({ system, materials, typed });
const reader = (typed: Record<string, string>, shown: Record<string, string> | null = null) =>
  new ShownReader<object>(typed, shown && {}, shown);
const faultsOf = ({ faults }: ShownReader<object>) => faults.map(({ path, message }) => `${path}: ${message}`);

describe('parts that were typed', () => {
  test('are read row by row; empty rows between them count for nothing', () => {
    const read = reader({ 'part-1': 'fibre', 'partQuantity-1': '2 oz', 'part-5': 'mortar', 'partQuantity-5': '1/2' });
    // 1 oz = 28.349523125 g, by definition: NIST SP 811 (2008), appendix B.
    expect(partsTyped(read, [], writing())).toEqual([
      { material: 'fibre', quantity: 56.69904625 },
      { material: 'mortar', quantity: 0.5 },
    ]);
    expect(read.faults).toEqual([]);
  });

  test('count what a yard shows where they are bare numbers', () => {
    const typed = { 'part-0': 'fibre', 'partQuantity-0': '2' };
    expect(partsTyped(reader(typed), [], writing('US'))).toEqual([{ material: 'fibre', quantity: 56.69904625 }]);
    expect(partsTyped(reader(typed), [], writing('metric'))).toEqual([{ material: 'fibre', quantity: 2 }]);
  });

  test('that come back as they were shown are what they were, to the last bit', () => {
    const before = [{ material: 'fibre', quantity: 100 / 3 }];
    const shown = { ...contentsTexts(before, [], writing()) };
    expect(shown).toEqual({ 'part-0': 'fibre', 'partQuantity-0': '33.33' });
    expect(partsTyped(reader(shown, shown), before, writing())).toEqual(before);
    const next = { ...shown, 'partQuantity-0': '33.3' };
    expect(partsTyped(reader(next, shown), before, writing())).toEqual([{ material: 'fibre', quantity: 33.3 }]);
  });

  test('are refused each at its row: unknown, twice, without an amount', () => {
    const read = reader({
      ...{ 'part-0': 'fibre', 'partQuantity-0': '1', 'part-1': 'fibre', 'partQuantity-1': '2' },
      ...{ 'partQuantity-2': '3', 'part-3': 'gone', 'partQuantity-3': '1', 'part-4': 'mortar' },
    });
    partsTyped(read, [], writing());
    expect(faultsOf(read)).toEqual([
      'part-1: That is there already.',
      'part-2: Which material is that?',
      'part-3: Which material is that?',
      'partQuantity-4: How much of it?',
    ]);
  });

  test('are read to the last row a file may fill', () => {
    const last = MOST_CONTENTS - 1;
    const read = reader({ [`part-${last}`]: 'mortar', [`partQuantity-${last}`]: '1' });
    expect(partsTyped(read, [], writing())).toEqual([{ material: 'mortar', quantity: 1 }]);
  });
});

describe('cuts that were typed', () => {
  test('are lengths in any unit, and how many', () => {
    const read = reader({ 'cut-0': 'rod', 'cutLength-0': '7 1/2 in', 'cutCount-0': '2' });
    expect(cutsTyped(read, [], writing())).toEqual([{ material: 'rod', lengthMm: 190.5, count: 2 }]);
  });

  test('of one material may stand in several rows', () => {
    const read = reader({
      ...{ 'cut-0': 'rod', 'cutLength-0': '300', 'cutCount-0': '2' },
      ...{ 'cut-1': 'rod', 'cutLength-1': '150', 'cutCount-1': '1' },
    });
    expect(cutsTyped(read, [], writing()).map(({ lengthMm }) => lengthMm)).toEqual([300, 150]);
    expect(read.faults).toEqual([]);
  });

  test('say everything that is missing of a row at once', () => {
    const read = reader({ 'cutCount-0': '0', 'cut-1': 'rod' });
    expect(cutsTyped(read, [], writing())).toEqual([{ material: 'rod', lengthMm: 0, count: 0 }]);
    expect(faultsOf(read)).toEqual([
      'cut-0: What is it cut from?',
      'cutLength-0: How long?',
      'cutCount-0: How many? Write a whole number, 1 to 1000.',
      'cutLength-1: How long?',
      'cutCount-1: How many? Write a whole number, 1 to 1000.',
    ]);
  });
});

describe('what the rows show', () => {
  const parts = [{ material: 'fibre', quantity: 56.69904625 }];
  const cuts = [{ material: 'rod', lengthMm: 190.5, count: 2 }];

  test('is what was typed, for as long as that is what is stored', () => {
    const typed = { 'part fibre': '2 oz', 'cut 0': '7 1/2 in' };
    expect(contentsTexts(parts, cuts, writing('metric', typed))).toMatchObject({
      ...{ 'partQuantity-0': '2 oz', 'cutLength-0': '7 1/2 in', 'cutCount-0': '2' },
    });
    const other = [{ material: 'fibre', quantity: 60 }];
    expect(contentsTexts(other, cuts, writing('metric', typed))).toMatchObject({ 'partQuantity-0': '60' });
  });

  test('goes by the yard’s units otherwise', () => {
    expect(contentsTexts(parts, cuts, writing('US'))).toMatchObject({
      ...{ 'partQuantity-0': '2', 'cutLength-0': '7 1/2 in' },
    });
    expect(contentsTexts(parts, cuts, writing('metric'))).toMatchObject({
      ...{ 'partQuantity-0': '56.7', 'cutLength-0': '190.5 mm' },
    });
  });

  test('of a bag is kept apart from what was typed for a piece', () => {
    const typed = { 'perBag fibre': '2 oz', 'part fibre': '56.69904625 g' };
    const ofBag = { ...writing('metric', typed), list: 'perBag' as const };
    expect(contentsTexts(parts, [], ofBag)['partQuantity-0']).toBe('2 oz');
    expect(contentsTexts(parts, [], writing('metric', typed))['partQuantity-0']).toBe('56.69904625 g');
  });
});

test('a fault of the file stands at the row it came from, past rows left empty', () => {
  const typed = { 'cut-2': 'rod', 'cut-4': 'rod', 'part-3': 'fibre' };
  const words = contentsWords(typed, 'parts');
  expect(words['cuts[0].lengthMm']?.('')).toEqual({
    path: 'cutLength-2',
    message: 'That is longer than one of it is sold.',
  });
  expect(words['cuts[1].material']?.('').path).toBe('cut-4');
  expect(words['parts[0].quantity']?.('').path).toBe('partQuantity-3');
  expect(words['cuts[2].lengthMm']).toBeUndefined();
});
