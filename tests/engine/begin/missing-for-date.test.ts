import { describe, expect, test } from 'vitest';
import { missingForDate } from '../../../src/engine/begin/missing-for-date.ts';
import { smallYard } from '../../support/small-yard.ts';

const bare = { materials: [], mixes: [], castings: [], moulds: [], kits: [], orders: [], work: [] };
const kindsOf = (changes: Parameters<typeof smallYard>[0]) =>
  missingForDate(smallYard(changes)).map(({ kind }) => kind);

describe('what is missing for a first date', () => {
  test('is everything in an empty yard, in the order in which a maker would say it', () => {
    expect(kindsOf(bare)).toEqual(['panel', 'mould', 'mix', 'hours']);
  });

  test('is nothing where one piece can be made', () => {
    expect(kindsOf({})).toEqual([]);
    expect(kindsOf({ kits: [], orders: [] })).toEqual([]);
  });

  test('is a mould when the only ones are scrapped, or damaged with no day to be mended', () => {
    const { moulds } = smallYard();
    const all = (condition: 'retired' | 'damaged') => moulds.map((mould) => ({ ...mould, condition }));
    expect(kindsOf({ moulds: all('retired') })).toEqual(['mould']);
    expect(kindsOf({ moulds: all('damaged') })).toEqual(['mould']);
    expect(kindsOf({ moulds: all('damaged').map((one) => ({ ...one, repairedOn: '2027-04-09' })) })).toEqual([]);
  });

  test('is hours when nothing may be mixed or set up in those there are, and not because nothing may be packed', () => {
    const saturday = { rule: 'FREQ=WEEKLY;BYDAY=SA', from: '2027-01-02', start: '08:00', end: '12:00' };
    expect(kindsOf({ work: [{ ...saturday, allows: ['strip', 'pack'] }] })).toEqual(['hours']);
    expect(kindsOf({ work: [{ ...saturday, crew: 0 }] })).toEqual(['hours']);
    expect(kindsOf({ work: [{ ...saturday, allows: ['prep', 'batch', 'strip'] }] })).toEqual([]);
  });

  test('is a mixer where there is none', () => {
    expect(kindsOf({ yard: { ...smallYard().yard, mixers: 0 } })).toEqual(['mixer']);
  });

  test('is what the plan says where all of it is there and still does not do', () => {
    const bags = smallYard().materials.map((one) => (one.id === 'mortar' ? { ...one, onHand: 0 } : one));
    expect(missingForDate(smallYard({ materials: bags }))).toEqual([
      { kind: 'else', piece: 'Panel 900', reason: expect.stringContaining('Fast-setting mortar') },
    ]);
    const short = { rule: 'FREQ=WEEKLY;BYDAY=SA', from: '2027-01-02', start: '08:00', end: '08:15' };
    expect(kindsOf({ work: [short] })).toEqual(['else']);
  });

  test('does not hang on what else is to be done, or on what stands in the yard', () => {
    const many = Array.from({ length: 200 }, (_, n) => ({
      ...{ id: `27-${String(n + 1).padStart(3, '0')}`, lines: [{ kit: 'pair', quantity: 5 }] },
    }));
    expect(kindsOf({ orders: many, finished: [{ casting: 'panel-900', count: 3 }] })).toEqual([]);
    expect(kindsOf({ work: [], finished: [{ casting: 'panel-900', count: 3 }] })).toEqual(['hours']);
  });
});
