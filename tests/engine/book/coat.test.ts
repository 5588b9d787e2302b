import { describe, expect, test } from 'vitest';
import type { Mould } from '../../../shared/mould.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { coat } from '../../../src/engine/book/coat.ts';
import { plannedYard, saturday } from '../../support/planned-yard.ts';

/** Saturday, when no. 2 is dirty and its coat due after 8 turns, with something else about that mould. */
const yardWith = (changes: Partial<Mould> = {}): YardFile => {
  const yard = plannedYard();
  return {
    ...{ ...yard, yard: { ...yard.yard, now: saturday('08:33') } },
    moulds: yard.moulds.map((mould) => (mould.id === '900 no. 2' ? { ...mould, ...changes } : mould)),
  };
};
const coated = (yard: YardFile, mould = '900 no. 2') => {
  const booked = coat(yard, { mould, doneAt: saturday('08:33') });
  return booked.ok ? booked.entries : booked.faults.map(({ path, message }) => `${path}: ${message}`);
};
// On at 8:33, it dries for 20 minutes.
const clean = { condition: 'ready', prepped: false, setFor: 'panel-900', turnsSinceOil: 0, dryFrom: saturday('08:53') };

describe('a mould coated', () => {
  test('is clean and bare, has made no turn since, and dries', () => {
    expect(coated(yardWith())).toEqual([{ kind: 'mould', mould: '900 no. 2', patch: clean }]);
  });

  test('is no longer set up', () => {
    expect(coated(yardWith({ condition: 'ready', prepped: true }))).toMatchObject([{ patch: clean }]);
  });

  test('is mended where its day to be mended has come, and out of use the day before', () => {
    expect(coated(yardWith({ condition: 'damaged', repairedOn: '2027-04-10' }))).toMatchObject([
      { patch: { ...clean, repairedOn: null, damageNote: null } },
    ]);
    const refused = ['mould: 900 no. 2 is out of use. Mark it mended first. Nothing was changed.'];
    expect(coated(yardWith({ condition: 'damaged', repairedOn: '2027-04-11' }))).toEqual(refused);
    expect(coated(yardWith({ condition: 'retired' }))).toEqual(refused);
  });

  test('is there, empty, and takes a coat', () => {
    expect(coated(yardWith(), 'none')).toEqual(['mould: There is no mould none.']);
    const inMould = [{ mould: '900 no. 2', casting: 'panel-900', filledAt: saturday('08:00') }];
    expect(coated({ ...yardWith(), inMould })).toEqual([
      'mould: 900 no. 2 has a piece in it. Strip it first. Nothing was changed.',
    ]);
    expect(coated(yardWith(), '900 no. 1')).toEqual(['mould: 900 no. 1 takes no sealing coat. Nothing was changed.']);
  });
});
