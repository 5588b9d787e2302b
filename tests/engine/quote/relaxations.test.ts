import { describe, expect, test } from 'vitest';
import { readYardFile, type YardFile } from '../../../shared/yard-file.ts';
import { castingsOf, relaxationsFor, withMould } from '../../../src/engine/quote/relaxations.ts';
import { yardSeeds } from '../../support/property-seed.ts';
import { randomYard } from '../../support/random-yard.ts';
import { smallYard } from '../../support/small-yard.ts';

const base = smallYard();
const pair = { id: 'new', weight: 1, lines: [{ kit: 'pair', quantity: 1 }] };

/** Paths of everything that differs between two values, an added entry of a list as `[+]`. */
const differences = (a: unknown, b: unknown, path = ''): string[] => {
  if (Object.is(a, b) || JSON.stringify(a) === JSON.stringify(b)) return [];
  if (Array.isArray(a) && Array.isArray(b) && b.length >= a.length)
    return [...a.flatMap((x, i) => differences(x, b[i], `${path}[]`)), ...b.slice(a.length).map(() => `${path}[+]`)];
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return [path];
  const keys = new Set([...Object.keys(a), ...Object.keys(b)]);
  const of = (x: object, key: string) => (x as Record<string, unknown>)[key];
  return [...keys].flatMap((key) => differences(of(a, key), of(b, key), path ? `${path}.${key}` : key));
};

/** All that a limit may change. Nothing of cure, stripping, coats, temperatures or heat is among it. */
const ALLOWED: Record<string, string[]> = {
  mould: ['moulds[+]'],
  mended: ['moulds[].condition', 'moulds[].repairedOn'],
  session: ['extra[+]'],
  hands: ['work[].crew', 'extra[].crew'],
  evening: ['extra[+]'],
  material: ['materials[].leadDays', 'materials[].minimum', 'incoming[].on'],
  rack: ['yard.rackSpaces'],
  mixer: ['mixes[].maxBags'],
};
const minutes = (clock: string) => Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3));

const yards: [string, YardFile][] = [
  ...yardSeeds(25).map((seed): [string, YardFile] => [`seed ${seed}`, randomYard(seed)]),
  ['the small yard', smallYard({ yard: { ...base.yard, rackSpaces: 3 } })],
];
const all = yards.flatMap(([name, yard]) =>
  relaxationsFor(yard, { ...(yard.orders[0] ?? pair), id: 'new' }).map((x) => ({ ...x, name })),
);

describe('what is relaxed, over many yards', () => {
  test('is of every kind there is', () => {
    expect(new Set(all.map((x) => x.limit))).toEqual(new Set(Object.keys(ALLOWED)));
  });

  test('changes what it says, and nothing else, field by field', () => {
    for (const [name, yard] of yards)
      for (const { limit, yard: relaxed } of relaxationsFor(yard, { ...(yard.orders[0] ?? pair), id: 'new' })) {
        const paths = differences(yard, relaxed);
        expect(paths.length, `${name} ${limit}`).toBeGreaterThan(0);
        for (const path of paths) expect(ALLOWED[limit], `${name} ${limit}`).toContain(path);
      }
  });

  test('leaves a yard file without a fault', () => {
    const faulty = all.filter((x) => !readYardFile(JSON.parse(JSON.stringify(x.yard))).ok).map((x) => x.name + x.limit);
    expect(faulty).toEqual([]);
  });
});

describe('one thing at a time', () => {
  const added = (limit: string, of: YardFile) => {
    const { yard } = relaxationsFor(of, pair).find((x) => x.limit === limit)!;
    return yard.extra.slice(of.extra.length);
  };

  test('an evening half hour is for stripping, by one person, in the evening and not late', () => {
    for (const [name, yard] of yards)
      for (const window of added('evening', yard)) {
        const { setUpMinutes, clearUpMinutes } = yard.yard;
        expect(window, name).toMatchObject({ crew: 1, allows: ['strip'] });
        expect(minutes(window.start)).toBeGreaterThanOrEqual(17 * 60);
        expect(minutes(window.start)).toBeLessThanOrEqual(20 * 60);
        expect(minutes(window.end) - minutes(window.start)).toBe(30 + setUpMinutes + clearUpMinutes);
      }
  });

  // Saturdays are worked; Friday the 9th is the first day of the coming week that is not.
  test('one more session has the yard\u2019s own hours, on a day of the coming week without one', () => {
    expect(added('session', smallYard())).toEqual([
      { date: '2027-04-09', start: '08:00', end: '12:00', crew: 1, allows: ['prep', 'batch', 'strip', 'pack'] },
    ]);
  });

  test('nobody is asked to work on a day off', () => {
    const off = smallYard({ closed: ['2027-04-09', '2027-04-12'] });
    expect(added('session', off).map(({ date }) => date)).toEqual(['2027-04-11']);
    const evenings = added('evening', off).map(({ date }) => date);
    expect(evenings).toContain('2027-04-11');
    for (const day of off.closed) expect(evenings).not.toContain(day);
  });

  test('a new mould takes three days to build, for two coats that dry overnight', () => {
    const { moulds } = withMould(smallYard(), 'panel-900')!;
    expect(moulds.at(-1)).toMatchObject({
      id: 'new panel-900',
      makes: [{ casting: 'panel-900', changeMinutes: 0 }],
      condition: 'damaged',
      repairedOn: '2027-04-11',
      prepped: false,
    });
    expect(withMould(smallYard({ moulds: [] }), 'panel-900')).toBe(null);
    const twice = withMould(withMould(smallYard(), 'panel-900')!, 'panel-900')!;
    expect(new Set(twice.moulds.map((m) => m.id)).size).toBe(4);
  });

  test('only moulds of what is asked for, each damaged one by itself', () => {
    const long = { ...base.castings[0]!, id: 'long' };
    const mould = (id: string, casting: string) => ({
      ...base.moulds[0]!,
      id,
      makes: [{ casting }],
      setFor: casting,
      condition: 'damaged' as const,
    });
    const yard = smallYard({
      castings: [...base.castings, long],
      moulds: [mould('A', 'panel-900'), mould('B', 'long'), mould('C', 'panel-900')],
    });
    const of = (limit: string) => relaxationsFor(yard, pair).flatMap((x) => (x.limit === limit ? [x.what] : []));
    expect(castingsOf(yard, pair).map((c) => c.id)).toEqual(['panel-900']);
    expect(of('mould')).toEqual(['panel-900']);
    expect(of('mended')).toEqual(['A', 'C']);
  });

  test('a material that comes later, or takes days to come, is fetched today', () => {
    const yard = smallYard({ incoming: [{ material: 'mortar', quantity: 5, on: '2027-04-20' }] });
    const fetched = relaxationsFor(yard, pair).filter((x) => x.limit === 'material');
    expect(fetched.map((x) => [x.what, x.yard.incoming[0]!.on, x.yard.materials[1]!.leadDays])).toEqual([
      ['mortar', '2027-04-08', 3],
      ['rod', '2027-04-20', 0],
    ]);
  });
});
