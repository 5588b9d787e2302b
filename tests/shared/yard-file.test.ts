import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readYardFile } from '../../shared/yard-file.ts';
import { planYard } from '../../src/engine/plan.ts';
import { refereePlan } from '../../src/engine/referee.ts';
import { audit } from '../contract/audit-plan.mjs';
import { randomYard } from '../support/random-yard.ts';
import { smallYard } from '../support/small-yard.ts';

type Json = null | boolean | number | string | Json[] | { [key: string]: Json };
type Key = string | number;

const plain = (x: unknown) => JSON.parse(JSON.stringify(x)) as Json;
const faultsOf = (input: unknown) => {
  const read = readYardFile(input);
  return read.ok ? [] : read.faults.map((f) => `${f.path}: ${f.message}`);
};
/** The small yard with one place changed; `undefined` takes it out. */
const withAt = (path: Key[], value: unknown): unknown => {
  const yard = plain(smallYard());
  const holder = path.slice(0, -1).reduce<Json>((x, key) => (x as Record<Key, Json>)[key]!, yard);
  (holder as Record<Key, unknown>)[path.at(-1)!] = value;
  return plain(yard);
};

test('the example of the contract is read, with every default filled in', () => {
  const example = JSON.parse(readFileSync(new URL('../contract/example.yard.json', import.meta.url), 'utf8'));
  const read = readYardFile(example);
  expect(read.ok).toBe(true);
  expect(smallYard()).toMatchObject({
    yard: {
      mixers: 1,
      setUpMinutes: 0,
      clearUpMinutes: 0,
      sessionsInHand: 0,
      deliveryDaysInHand: 0,
      batchWorthDays: 5,
      bagWorthDays: 0.5,
    },
    work: [{ crew: 1, allows: ['prep', 'batch', 'strip', 'pack'] }],
    materials: [{ pack: 1, minimum: 0, kerfMm: 0 }, { kerfMm: 3 }],
    mixes: [
      {
        bagStep: 1,
        crew: 1,
        washMinutes: 0,
        attendMinutes: 0,
        referenceCelsius: 20,
        activationKelvin: 5000,
        protectHours: 0,
      },
    ],
    castings: [{ stripCrew: 1, rackSpaces: 1 }],
    moulds: [{ makes: [{ changeMinutes: 0 }], prepped: false, turnsSinceOil: 0, oilMinutes: 0, oilDryMinutes: 0 }, {}],
    kits: [{ packMinutes: 5 }],
    orders: [{ weight: 1 }],
  });
});

describe('one fault, with its path', () => {
  test.each<[Key[], unknown, string]>([
    [['version'], 3, 'version: has to be 1 or 2'],
    [['format'], 'other', 'format: has to be "mould-rota/yard"'],
    [['yard', 'name'], undefined, 'yard.name: is missing'],
    [['yard', 'colour'], 'red', 'yard.colour: is not a field of this format'],
    [['extras'], [], 'extras: is not a field of this format'],
    [['yard', 'timeZone'], 'Europe/Larch', 'yard.timeZone: is no time zone of the IANA list'],
    [['yard', 'now'], '2027-04-08T09:00:00', 'yard.now: is no instant with an offset, in whole minutes (RFC 3339)'],
    [['yard', 'horizonDays'], 0, 'yard.horizonDays: has to be 1 to 7300'],
    [['yard', 'horizonDays'], 7301, 'yard.horizonDays: has to be 1 to 7300'],
    [['yard', 'mixers'], 1.5, 'yard.mixers: has to be a whole number'],
    [['yard', 'rackSpaces'], -1, 'yard.rackSpaces: is negative'],
    [['yard', 'handoverDays'], ['XX'], 'yard.handoverDays[0]: has to be "MO", "TU", "WE", "TH", "FR", "SA", "SU"'],
    [['work', 0, 'rule'], 'FREQ=YEARLY', 'work[0].rule: has to repeat DAILY, WEEKLY or MONTHLY'],
    [['work', 0, 'from'], '2027-02-29', 'work[0].from: is no date that exists (YYYY-MM-DD)'],
    [['work', 0, 'end'], '08:00', 'work[0].end: is not after the start'],
    [['work', 0, 'start'], '24:00', 'work[0].start: is no time of day (HH:MM)'],
    [['closed'], ['2027-04-31'], 'closed[0]: is no date that exists (YYYY-MM-DD)'],
    [['materials', 0, 'onHand'], -1, 'materials[0].onHand: is negative'],
    [['materials', 0, 'pack'], 0, 'materials[0].pack: has to be more than 0'],
    [['materials', 0, 'leadDays'], 1.5, 'materials[0].leadDays: has to be a whole number'],
    [['mixes', 0, 'yieldKgPerBag'], 0, 'mixes[0].yieldKgPerBag: has to be more than 0'],
    [['mixes', 0, 'mixMinutes'], 1.5, 'mixes[0].mixMinutes: has to be a whole number'],
    [['mixes', 0, 'referenceCelsius'], -300, 'mixes[0].referenceCelsius: is colder than absolute zero'],
    [['castings', 0, 'fillMinutes'], 0, 'castings[0].fillMinutes: has to be at least 1'],
    [['castings', 0, 'kg'], '13', 'castings[0].kg: has to be of type number'],
    [['moulds', 1, 'condition'], 'lost', 'moulds[1].condition: has to be "ready", "dirty", "damaged", "retired"'],
    [['moulds', 1, 'setFor'], 'x', 'moulds[1].setFor: no casting named "x"'],
    [['moulds'], {}, 'moulds: has to be of type array'],
    [['orders', 0, 'lines', 0, 'quantity'], 0.5, 'orders[0].lines[0].quantity: has to be a whole number'],
    [['orders', 0, 'id'], '', 'orders[0].id: is empty'],
    [['yard', 'promiseOdds'], 0.7, 'yard.promiseOdds: has to be 0.5, 0.8, 0.9, 0.95'],
    [
      ['record'],
      {
        pieces: [{ mould: 'gone', casting: 'gone', of: 3, mend: 2, scrap: 2 }],
        sessions: { bad: 0, of: 0 },
        deliveries: [],
      },
      'record.pieces[0].scrap: is more than there were',
    ],
  ])('%j %j', (path, value, fault) => expect(faultsOf(withAt(path, value))).toContain(fault));
});

describe('all faults at once', () => {
  test('those of shape beside those of what does not go together', () => {
    const yard = smallYard();
    expect(
      faultsOf({
        ...yard,
        castings: [{ ...yard.castings[0]!, kg: -1, mix: 'x' }],
        moulds: [
          { ...yard.moulds[0]!, setFor: 'y' },
          { ...yard.moulds[1]!, turnsSinceOil: 0.5 },
        ],
        orders: [{ ...yard.orders[0]!, due: '2027-02-30' }],
      }).sort(),
    ).toEqual(
      [
        'castings[0].kg: is negative',
        'castings[0].mix: no mix named "x"',
        'moulds[0].setFor: no casting named "y"',
        'moulds[1].turnsSinceOil: has to be a whole number',
        'orders[0].due: is no date that exists (YYYY-MM-DD)',
      ].sort(),
    );
  });

  test('every field that has to be there, of nothing at all', () => {
    const lists = ['work', 'closed', 'extra', 'temperatures', 'materials', 'incoming', 'mixes', 'castings', 'moulds'];
    const rest = ['format', 'version', 'yard', 'kits', 'finished', 'inMould', 'orders'];
    const read = readYardFile({});
    expect(read.ok ? [] : read.faults.map((f) => f.path).sort()).toEqual([...lists, ...rest].sort());
    expect(faultsOf(null)).toEqual(['file: has to be of type object']);
  });
});

describe('no faults', () => {
  test.each<[Key[], unknown]>([
    [['moulds'], []],
    [['orders'], []],
    [['materials', 0, 'onHand'], 0],
    [['orders', 0, 'due'], '1999-12-31'],
    [['orders', 0, 'weight'], 0],
    [['moulds', 0, 'condition'], 'damaged'],
    [['work', 0, 'end'], '24:00'],
    [['yard', 'handoverDays'], []],
  ])('%j %j', (path, value) => expect(faultsOf(withAt(path, value))).toEqual([]));
});

/** Every place of a JSON value that holds no list and no object. */
const leavesOf = (x: Json, path: Key[] = []): Key[][] => {
  if (typeof x !== 'object' || x === null) return [path];
  return Object.entries(x).flatMap(([key, y]) => leavesOf(y, [...path, Array.isArray(x) ? Number(key) : key]));
};
const NUMBERS = [0, 1, 2, 3, 7, 30, 100, 1440, 1e6, 0.5, -1];
const TEXTS = [
  ...['', 'x', '2027-04-08', '2027-02-29', '2030-01-01', '2027-04-08T09:00:00Z', '00:00', '24:00', '12:30', 'retired'],
  ...['damaged', 'dirty', 'strip', 'FREQ=DAILY', 'FREQ=MONTHLY;BYMONTHDAY=31', 'UTC', 'Pacific/Apia'],
];
const STRANGE: unknown[] = [undefined, null, true, [], {}, 'x', 1];

/** Something else of the same type most of the time, something strange now and then. */
const instead = (old: Json, n: number): unknown => {
  const of = (list: readonly unknown[]) => list[Math.floor(n / 8) % list.length];
  if (n % 8 === 0) return of(STRANGE);
  if (typeof old === 'number') return of(NUMBERS);
  return typeof old === 'boolean' ? !old : of(TEXTS);
};
const at = (x: Json, path: Key[]): Json => path.reduce<Json>((y, key) => (y as Record<Key, Json>)[key]!, x);

const mutated = fc
  .tuple(
    fc.integer({ min: 0, max: 199 }),
    fc.array(fc.tuple(fc.boolean(), fc.nat(), fc.nat({ max: 1e6 })), { minLength: 1, maxLength: 3 }),
  )
  .map(([seed, changes]) => {
    const yard = plain(randomYard(seed, 'small'));
    for (const [aNumber, n, value] of changes) {
      const leaves = leavesOf(yard).filter((path) => !aNumber || typeof at(yard, path) === 'number');
      const path = leaves[n % leaves.length]!;
      (at(yard, path.slice(0, -1)) as Record<Key, unknown>)[path.at(-1)!] = instead(at(yard, path), value);
    }
    return plain(yard);
  });

test('any file that passes can be planned, by the rules; any other names its faults', { timeout: 60_000 }, () => {
  let [passed, failed] = [0, 0];
  fc.assert(
    fc.property(mutated, (input) => {
      const read = readYardFile(input);
      if (!read.ok) {
        failed++;
        expect(read.faults.length).toBeGreaterThan(0);
        expect(read.faults.every((f) => f.path.length > 0 && f.message.length > 0)).toBe(true);
        return;
      }
      passed++;
      const plan = planYard(read.yard, { effort: 'quick' });
      expect(refereePlan(read.yard, plan)).toEqual([]);
      expect(audit(read.yard, plan).faults).toEqual([]);
    }),
    { numRuns: 400, endOnFailure: true },
  );
  expect([passed > 50, failed > 50]).toEqual([true, true]);
});
