import { describe, expect, test } from 'vitest';
import type { UnitSystem } from '../../../shared/units.ts';
import { castingTexts, castingTyped, type Size, withCasting } from '../../../src/usecases/typed/casting-form.ts';
import { smallYard } from '../../support/small-yard.ts';

const yard = smallYard();
const panel = yard.castings[0]!;
const writing = (system: UnitSystem = 'metric') => ({ system, materials: yard.materials, typed: {} });
const mm = (length: number) => ({ typed: `${length}`, mm: length });
const SIZE: Size = { length: mm(900), height: mm(200), thickness: mm(35) };
const NEW = { id: 'tile', name: null, length: null };
const TYPED = { name: 'Tile', mix: 'thin', kg: '5' };

const added = (typed: Record<string, string>, what: Parameters<typeof castingTyped>[1] = NEW) =>
  castingTyped(typed, what, null, yard, writing());
const faultsOf = (outcome: ReturnType<typeof castingTyped>) =>
  outcome.ok ? [] : outcome.faults.map(({ path, message }) => `${path}: ${message}`);

describe('a piece that is added', () => {
  test('by its weight alone has the other figures guessed as for a panel of 900', () => {
    expect(added(TYPED)).toEqual({
      ok: true,
      value: {
        casting: {
          ...{ id: 'tile', name: 'Tile', mix: 'thin', kg: 5, stripCrew: 1, rackSpaces: 1, perPiece: [], cuts: [] },
          ...{ fillMinutes: 7, prepMinutes: 12, stripMinutes: 8, cleanMinutes: 6 },
        },
        size: null,
        guesses: ['fillMinutes', 'stripMinutes', 'cleanMinutes', 'prepMinutes'],
      },
    });
  });

  test('by its size has its weight worked out, and that is a guess', () => {
    const outcome = added({ ...TYPED, kg: '', length: '600', height: '20 cm', thickness: '35' });
    // 0.6 x 0.2 x 0.035 m at 2150 kg/m³ is 9.03 kg.
    expect(outcome).toMatchObject({ ok: true, value: { casting: { kg: 9 }, size: { height: { mm: 200 } } } });
    expect(outcome.ok && outcome.value.guesses).toContain('kg');
  });

  test('of a given length is as long as that, whatever stands in the field for one', () => {
    const typed = { ...TYPED, height: '200', thickness: '35', length: '1' };
    const outcome = added(typed, { id: 'panel-750', name: 'Panel 750', length: '750' });
    expect(outcome).toMatchObject({
      ok: true,
      value: { casting: { name: 'Panel 750' }, size: { length: { typed: '750', mm: 750 } } },
    });
  });

  test('of a short length is taken as it is where its unit is said', () => {
    const outcome = added({ ...TYPED, length: '48 mm', height: '200', thickness: '35' });
    expect(outcome).toMatchObject({ ok: true, value: { size: { length: { typed: '48 mm', mm: 48 } } } });
  });

  test('with minutes that were typed is guessed in nothing', () => {
    const minutes = { fillMinutes: '5', stripMinutes: '0', cleanMinutes: '3', prepMinutes: '9' };
    const outcome = added({ ...TYPED, ...minutes, stripCrew: '2', rackSpaces: '0' });
    expect(outcome.ok && outcome.value.guesses).toEqual([]);
    expect(outcome.ok && outcome.value.casting).toMatchObject({
      ...{ fillMinutes: 5, stripMinutes: 0, cleanMinutes: 3, prepMinutes: 9, stripCrew: 2, rackSpaces: 0 },
    });
  });

  test.each<[Record<string, string>, string[]]>([
    [{ ...TYPED, name: '' }, ['name: What is it called?']],
    [{ ...TYPED, name: 'panel 900' }, ['name: There is a panel 900 already.']],
    [{ ...TYPED, mix: 'gone' }, ['mix: From which mix is it cast?']],
    [{ ...TYPED, kg: '' }, ['kg: What does one weigh? Or write its size, and it is worked out.']],
    [{ ...TYPED, fillMinutes: '0' }, ['fillMinutes: How many minutes? Write a whole number, 1 to 1440.']],
    [{ ...TYPED, length: '900', height: '200' }, ['thickness: Write all three, or none of them.']],
    [{ ...TYPED, length: '48', height: '200', thickness: '35' }, ['lengths: 48 mm or 48 in? Write it with its unit.']],
    [
      { name: '', mix: '', kg: 'much', stripCrew: 'two' },
      [
        'mix: From which mix is it cast?',
        'name: What is it called?',
        expect.stringMatching(/^kg: "much" is not a weight/) as never,
        expect.stringMatching(/^stripCrew: How many people\?/) as never,
      ],
    ],
  ])('%o is refused, all of it at once', (typed, faults) => {
    expect(faultsOf(added(typed))).toEqual(faults);
  });
});

describe('a piece whose form comes back', () => {
  const before = { casting: { ...panel, kg: 13.6077711 }, size: SIZE, isWeightGuessed: false };
  const WHAT = { id: panel.id, name: null, length: null };
  const again = (typed: Record<string, string>, was = before, system: UnitSystem = 'metric') =>
    castingTyped(
      { ...castingTexts(was.casting, was.size, writing(system)), ...typed },
      WHAT,
      was,
      yard,
      writing(system),
    );

  test.each<UnitSystem>(['metric', 'US'])('as it was shown is just what it was (%s)', (system) => {
    expect(again({}, before, system)).toEqual({
      ok: true,
      value: { casting: before.casting, size: SIZE, guesses: [] },
    });
  });

  test('may keep its own name, and not take another’s', () => {
    const two = { ...yard, castings: [...yard.castings, { ...panel, id: 'tile', name: 'Tile' }] };
    const named = (name: string) =>
      faultsOf(
        castingTyped(
          { ...castingTexts(panel, null, writing()), name },
          WHAT,
          { ...before, size: null },
          two,
          writing(),
        ),
      );
    expect(named('Panel 900')).toEqual([]);
    expect(named('TILE')).toEqual(['name: There is a TILE already.']);
  });

  test('of another size is weighed anew only where nobody had weighed it', () => {
    const guessed = { ...before, isWeightGuessed: true };
    // 0.9 x 0.2 x 0.05 m at 2150 kg/m³ is 19.35 kg.
    expect(again({ thickness: '50' }, guessed)).toMatchObject({ value: { casting: { kg: 19.4 }, guesses: ['kg'] } });
    expect(again({ thickness: '50' })).toMatchObject({ value: { casting: { kg: 13.6077711 }, guesses: [] } });
    expect(again({ thickness: '50', kg: '19' }, guessed)).toMatchObject({
      value: { casting: { kg: 19 }, guesses: [] },
    });
  });

  test('with its size emptied has none', () => {
    expect(again({ length: '', height: '', thickness: '' })).toMatchObject({ ok: true, value: { size: null } });
  });
});

describe('the yard with a piece in it', () => {
  const tile = { ...panel, id: 'tile', name: 'Tile' };

  test('has it in its place, or last', () => {
    const more = withCasting(yard, tile, {});
    expect(more.ok && more.value.castings.map(({ id }) => id)).toEqual(['panel-900', 'tile']);
    const same = withCasting(yard, { ...panel, kg: 14 }, {});
    expect(same.ok && same.value.castings.map(({ kg }) => kg)).toEqual([14]);
  });

  test.each([
    [{ ...tile, kg: 28 }, {}, 'kg: That is more than the largest batch of its mix.'],
    [
      { ...tile, fillMinutes: 21 },
      {},
      'fillMinutes: The mix would stiffen before one is full. Fewer minutes, or another mix.',
    ],
    [
      { ...tile, cuts: [{ material: 'rod', lengthMm: 3001, count: 1 }] },
      { 'cut-3': 'rod' },
      'cutLength-3: That is longer than one of it is sold.',
    ],
    [
      { ...tile, cuts: [{ material: 'mortar', lengthMm: 100, count: 1 }] },
      { 'cut-0': 'mortar' },
      'cut-0: It is not sold as lengths that are cut: see its page in stock.',
    ],
  ])('refuses what no yard file may hold, at its field (%#)', (casting, typed, fault) => {
    const outcome = withCasting(yard, casting, typed);
    expect(outcome.ok ? [] : outcome.faults.map(({ path, message }) => `${path}: ${message}`)).toContain(fault);
  });
});
