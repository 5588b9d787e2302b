import { describe, expect, test } from 'vitest';
import type { Mould } from '../../../shared/mould.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { setUp } from '../../../src/engine/book/set-up.ts';
import { plannedYard, saturday } from '../../support/planned-yard.ts';

/** Saturday, when no. 2 is dirty and its coat due after 8 turns, with something else about that mould. */
const yardWith = (changes: Partial<Mould> = {}): YardFile => {
  const yard = plannedYard();
  return {
    ...{ ...yard, yard: { ...yard.yard, now: saturday('08:45') } },
    moulds: yard.moulds.map((mould) => (mould.id === '900 no. 2' ? { ...mould, ...changes } : mould)),
  };
};
const made = (yard: YardFile, changes: { coated?: boolean; mould?: string } = {}) => {
  const work = { mould: '900 no. 2', casting: 'panel-900', coated: true, doneAt: saturday('08:45'), ...changes };
  const booked = setUp(yard, work);
  return booked.ok ? booked.entries : booked.faults.map(({ path, message }) => `${path}: ${message}`);
};
const ready = { condition: 'ready', prepped: true, setFor: 'panel-900' };

describe('a mould made ready', () => {
  test('has a coat of no turns where it got one, and the turns it had where not', () => {
    const entry = { kind: 'mould', mould: '900 no. 2' };
    expect(made(yardWith())).toEqual([{ ...entry, patch: { ...ready, turnsSinceOil: 0 } }]);
    expect(made(yardWith(), { coated: false })).toEqual([{ ...entry, patch: { ...ready, turnsSinceOil: 8 } }]);
  });

  test('is mended where its day to be mended has come, and out of use the day before', () => {
    expect(made(yardWith({ condition: 'damaged', repairedOn: '2027-04-10' }))).toMatchObject([
      { patch: { ...ready, repairedOn: null, damageNote: null } },
    ]);
    const refused = ['mould: 900 no. 2 is out of use. Mark it mended first. Nothing was changed.'];
    expect(made(yardWith({ condition: 'damaged', repairedOn: '2027-04-11' }))).toEqual(refused);
    expect(made(yardWith({ condition: 'damaged' }))).toEqual(refused);
    expect(made(yardWith({ condition: 'retired' }))).toEqual(refused);
  });

  test('is there, empty, and makes that piece', () => {
    expect(made(yardWith(), { mould: 'none' })).toEqual(['mould: There is no mould none.']);
    const inMould = [{ mould: '900 no. 2', casting: 'panel-900', filledAt: saturday('08:00') }];
    expect(made({ ...yardWith(), inMould })).toEqual([
      'mould: 900 no. 2 has a piece in it. Strip it first. Nothing was changed.',
    ]);
    expect(made(yardWith({ makes: [] }))).toEqual(['mould: 900 no. 2 does not make that piece. Nothing was changed.']);
  });
});
