import { describe, expect, test } from 'vitest';
import { type OnRecord, usesOf, usesText } from '../../../src/usecases/yard/uses-of.ts';
import { smallYard } from '../../support/small-yard.ts';

const none: OnRecord = { open: [], past: [], toMend: [] };
const orders: OnRecord = {
  ...none,
  open: [{ id: '27-001', lines: [{ kit: 'pair', quantity: 1 }] }],
  past: [{ id: '26-009', lines: [{ casting: 'panel-900', quantity: 2 }] }],
};

describe('what uses', () => {
  test('a panel is every mould, kit, order and piece of it', () => {
    const yard = smallYard({
      inMould: [{ mould: '900 no. 2', casting: 'panel-900', filledAt: '2027-04-08T08:00:00+01:00' }],
      finished: [{ casting: 'panel-900', count: 3 }],
    });
    const record = { ...orders, toMend: [{ casting: 'panel-900' }, { casting: 'panel-600' }] };
    const uses = usesOf(yard, record, 'casting', 'panel-900');
    expect(usesText('Panel 900', uses)).toBe(
      'Panel 900 is made by 2 moulds (900 no. 1 and 900 no. 2), is in 1 kit (Pair of panels), was in 1 past order (26-009), is in 1 mould that is not stripped yet (900 no. 2), has a piece to mend and stands in the yard 3 times.',
    );
  });

  test('a mix is what is cast from it', () => {
    expect(usesText('Thin panel mix', usesOf(smallYard(), none, 'mix', 'thin'))).toBe(
      'Thin panel mix is what 1 panel or piece is cast from (Panel 900).',
    );
  });

  test('a material is each mix, panel, kit and order it goes into, and what is on its way', () => {
    const yard = smallYard({ incoming: [{ material: 'rod', quantity: 2, on: '2027-04-12' }] });
    expect(usesOf(yard, none, 'material', 'rod')).toEqual(['goes into 1 kit (Pair of panels)', 'is on its way']);
    expect(usesOf(yard, none, 'material', 'mortar')).toEqual(['goes into 1 mix (Thin panel mix)']);
    const open = [{ id: '27-002', lines: [{ material: 'rod', quantity: 1 }] }];
    expect(usesOf(yard, { ...none, open }, 'material', 'rod')).toContain('is in 1 order (27-002)');
  });

  test('a kit is the orders it is in, those over among them', () => {
    expect(usesOf(smallYard(), orders, 'kit', 'pair')).toEqual(['is in 1 order (27-001)']);
    const past = [{ id: '26-001', lines: [{ kit: 'pair', quantity: 1 }] }];
    expect(usesOf(smallYard(), { ...none, past }, 'kit', 'pair')).toEqual(['was in 1 past order (26-001)']);
    expect(usesOf(smallYard(), none, 'kit', 'pair')).toEqual([]);
  });

  test('a mould is the piece in it, or that it has been poured; a new or a scrapped one is used by nothing', () => {
    const [first, second] = smallYard().moulds;
    const uses = (mould: typeof first, changes = {}) =>
      usesOf(smallYard({ moulds: [mould!, second!], ...changes }), none, 'mould', '900 no. 1');
    expect(uses(first)).toEqual([]);
    expect(uses({ ...first!, turnsSinceOil: 4 })).toEqual(['has been poured before']);
    expect(uses({ ...first!, condition: 'retired', turnsSinceOil: 4 })).toEqual([]);
    const inMould = [{ mould: '900 no. 1', casting: 'panel-900', filledAt: '2027-04-08T08:00:00+01:00' }];
    expect(uses(first, { inMould })).toEqual(['has a piece in it (Panel 900)']);
  });

  test('much of it is named in part', () => {
    const open = Array.from({ length: 9 }, (_, n) => ({ id: `27-00${n}`, lines: [{ kit: 'pair', quantity: 1 }] }));
    expect(usesOf(smallYard(), { ...none, open }, 'kit', 'pair')).toEqual([
      'is in 9 orders (27-000, 27-001, 27-002, 27-003, 27-004 and 4 more)',
    ]);
  });
});
