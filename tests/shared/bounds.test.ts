import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readYardFile, type YardFile } from '../../shared/yard-file.ts';
import { planYard } from '../../src/engine/plan.ts';
import { refereePlan } from '../../src/engine/referee.ts';

type Place = (string | number)[];
type Holder = Record<string | number, unknown>;

/** The example of the contract, with every default filled in. */
const example = (): YardFile => {
  const file = JSON.parse(readFileSync(new URL('../contract/example.yard.json', import.meta.url), 'utf8'));
  const read = readYardFile(file);
  if (!read.ok) throw new Error(read.faults.map((x) => `${x.path}: ${x.message}`).join('; '));
  return read.yard;
};

/** Where numbers stand, one place for each name that a list's entries have. */
const placesOf = (x: unknown, path: Place = [], seen = new Set<string>()): Place[] => {
  if (typeof x === 'number') {
    const name = path.filter((key) => typeof key === 'string').join('.');
    if (seen.has(name)) return [];
    seen.add(name);
    return [path];
  }
  if (typeof x !== 'object' || x === null) return [];
  return Object.entries(x).flatMap(([key, y]) => placesOf(y, [...path, Array.isArray(x) ? Number(key) : key], seen));
};

const withNumber = (place: Place, value: number): YardFile => {
  const yard = example();
  const holder = place.slice(0, -1).reduce<unknown>((x, key) => (x as Holder)[key], yard) as Holder;
  holder[place.at(-1)!] = value;
  return yard;
};
const textOf = (place: Place) =>
  place
    .map((x) => (typeof x === 'number' ? `[${x}]` : `.${x}`))
    .join('')
    .slice(1);

/** What the bounds are, from the largest on. */
const BOUNDS = [1_000_000_000, 1_000_000, 100_000, 87_600, 10_000, 7300, 1000, 100, 30, 20, 1];
const places = placesOf(example()).filter((place) => place[0] !== 'version');

describe('a number in a yard file', { timeout: 60_000 }, () => {
  test.each(places.map((place) => [textOf(place), place] as const))(
    '%s has a largest, and that can be planned',
    (text, place) => {
      const beyond = readYardFile(withNumber(place, 1e15));
      expect(beyond.ok ? 'passed' : beyond.faults.map((x) => x.path)).toContain(text);
      const largest = BOUNDS.find((value) => readYardFile(withNumber(place, value)).ok)!;
      const read = readYardFile(withNumber(place, largest));
      const { yard } = read as { yard: YardFile };
      expect(refereePlan(yard, planYard(yard, { effort: 'quick' }))).toEqual([]);
    },
  );
});

describe('what orders ask for', { timeout: 60_000 }, () => {
  const faultsOf = (orders: YardFile['orders']) => {
    const read = readYardFile({ ...example(), finished: [], inMould: [], orders });
    return read.ok ? [] : read.faults.map((x) => `${x.path}: ${x.message}`);
  };
  const order = (id: string, lines: YardFile['orders'][number]['lines']) => ({ id, weight: 1, lines });

  test('is bounded a line', () => {
    expect(faultsOf([order('a', [{ kit: 'cap-set', quantity: 10_000 }])])).toEqual([]);
    expect(faultsOf([order('a', [{ kit: 'cap-set', quantity: 10_001 }])])).toEqual([
      'orders[0].lines[0].quantity: is more than 10,000',
    ]);
    expect(faultsOf([order('a', [{ casting: 'cap-550', quantity: 1_000_000 }])])).toEqual([
      'orders[0].lines[0].quantity: is more than 10,000',
    ]);
    expect(faultsOf([order('a', [{ material: 'citric-acid', quantity: 50_000 }])])).toEqual([]);
  });

  // A trough is 4 panels and 4 pins: 10,000 of them are 80,000, and 20,000 panels more are the most.
  test('is bounded in all, by pieces and cuts', () => {
    const panels = [10_000, 10_000].map((quantity) => ({ casting: 'panel-500', quantity }));
    const most = [order('a', [{ kit: 'trough', quantity: 10_000 }]), order('b', panels)];
    expect(faultsOf(most)).toEqual([]);
    expect(faultsOf([...most, order('c', [{ casting: 'panel-800', quantity: 1 }])])).toEqual([
      'orders[2].lines[0].quantity: with this all orders ask for more than 100,000 pieces and cuts',
    ]);
  });

  test('can be planned where it is the most', () => {
    const panels = Array.from({ length: 10 }, () => ({ casting: 'panel-500', quantity: 10_000 }));
    const yard = { ...example(), finished: [], orders: [order('a', panels)] };
    expect(planYard(yard, { effort: 'quick' }).unplanned).toMatchObject([{ order: 'a', cause: 'time' }]);
  });
});
