import { describe, expect, test } from 'vitest';
import type { UnitSystem } from '../../../shared/units.ts';
import { kitTexts, kitTyped, withKit } from '../../../src/usecases/typed/kit-form.ts';
import { smallYard } from '../../support/small-yard.ts';

const yard = smallYard();
const pair = yard.kits[0]!;
const writing = (system: UnitSystem = 'metric') => ({ system, materials: yard.materials, typed: {} });
const FOUR = { name: 'Four of them', 'piece-0': 'panel-900', 'pieceCount-0': '4' };
const added = (typed: Record<string, string>) => kitTyped(typed, 'four', null, yard, writing());
const faultsOf = (outcome: ReturnType<typeof kitTyped>) =>
  outcome.ok ? [] : outcome.faults.map(({ path, message }) => `${path}: ${message}`);

describe('a kit that is typed', () => {
  test('takes its pieces, parts and cuts from whichever rows they stand in', () => {
    const typed = {
      ...{ name: 'Bench', 'piece-3': 'panel-900', 'pieceCount-3': '2', packMinutes: '7' },
      ...{ 'part-1': 'mortar', 'partQuantity-1': '0.5', 'cut-2': 'rod', 'cutLength-2': '1 ft', 'cutCount-2': '4' },
    };
    expect(added(typed)).toEqual({
      ok: true,
      value: {
        ...{ id: 'four', name: 'Bench', packMinutes: 7, pieces: [{ casting: 'panel-900', count: 2 }] },
        parts: [{ material: 'mortar', quantity: 0.5 }],
        cuts: [{ material: 'rod', lengthMm: 304.8, count: 4 }],
      },
    });
  });

  test('needs no minutes to pack, and no pieces where it has parts', () => {
    expect(added(FOUR)).toMatchObject({ ok: true, value: { packMinutes: 0 } });
    expect(added({ name: 'Pins', 'cut-0': 'rod', 'cutLength-0': '300', 'cutCount-0': '4' })).toMatchObject({
      ok: true,
      value: { pieces: [], cuts: [{ count: 4 }] },
    });
  });

  test.each<[Record<string, string>, string[]]>([
    [{ name: 'Nothing' }, ['piece-0: What is in it? Choose a piece, and how many.']],
    [{ ...FOUR, name: 'PAIR of panels' }, ['name: There is a PAIR of panels already.']],
    [{ ...FOUR, 'piece-1': 'panel-900', 'pieceCount-1': '1' }, ['piece-1: That is there already.']],
    [{ ...FOUR, 'piece-2': 'gone', 'pieceCount-2': '1' }, ['piece-2: Which piece is that?']],
    [{ ...FOUR, 'pieceCount-0': '1001' }, ['pieceCount-0: How many? Write a whole number, 1 to 1000.']],
    [{ ...FOUR, packMinutes: '1.5' }, ['packMinutes: How many minutes? Write a whole number, 0 to 1440.']],
    [
      { name: '', 'pieceCount-0': 'x' },
      [
        'name: What is the kit called?',
        'piece-0: Which piece is that?',
        'pieceCount-0: How many? Write a whole number, 1 to 1000.',
      ],
    ],
  ])('%o is refused, all of it at once', (typed, faults) => {
    expect(faultsOf(added(typed))).toEqual(faults);
  });

  test('may keep its own name', () => {
    expect(kitTyped({ ...kitTexts(pair, writing()) }, pair.id, pair, yard, writing())).toEqual({
      ok: true,
      value: pair,
    });
  });

  test.each<UnitSystem>(['metric', 'US'])('and comes back as it was shown is just what it was (%s)', (system) => {
    const odd = {
      ...pair,
      parts: [{ material: 'mortar', quantity: 1 / 3 }],
      cuts: [{ ...pair.cuts[0]!, lengthMm: 333.333 }],
    };
    expect(kitTyped({ ...kitTexts(odd, writing(system)) }, odd.id, odd, yard, writing(system))).toEqual({
      ok: true,
      value: odd,
    });
  });
});

describe('the yard with a kit in it', () => {
  test('has it in its place, or last', () => {
    const more = withKit(yard, { ...pair, id: 'four', name: 'Four' }, {});
    expect(more.ok && more.value.kits.map(({ id }) => id)).toEqual(['pair', 'four']);
    const same = withKit(yard, { ...pair, packMinutes: 9 }, {});
    expect(same.ok && same.value.kits.map(({ packMinutes }) => packMinutes)).toEqual([9]);
  });

  test('refuses a pin longer than its rod, at its row', () => {
    const long = { ...pair, cuts: [{ material: 'rod', lengthMm: 3000.1, count: 1 }] };
    const outcome = withKit(yard, long, { 'cut-1': 'rod' });
    expect(outcome.ok ? [] : outcome.faults).toEqual([
      { path: 'cutLength-1', message: 'That is longer than one of it is sold.' },
    ]);
  });
});
