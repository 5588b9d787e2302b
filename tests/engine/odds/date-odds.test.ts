import { describe, expect, test } from 'vitest';
import type { YardFileInput } from '../../../shared/yard-file.ts';
import type { YardRecord } from '../../../shared/yard-record.ts';
import { dateOdds, dayWith } from '../../../src/engine/odds/date-odds.ts';
import { smallYard } from '../../support/small-yard.ts';

/** So much is on record that a share is as good as known. */
const MANY = 10_000_000;
const DRAWS = 1000;

const recordOf = (rejects: number, lost: number): YardRecord => ({
  pieces: [{ mould: '900 no. 1', casting: 'panel-900', of: MANY, mend: 0, scrap: rejects * MANY }],
  sessions: { bad: lost * MANY, of: MANY },
  deliveries: [],
});

/** One mould, an hour every day from 8 April on, pieces that stay overnight; handed over on any day. */
const daily = (changes: Partial<YardFileInput>) => {
  const { yard, mixes, moulds } = smallYard();
  return smallYard({
    yard: { ...yard, now: '2027-04-08T07:00:00+01:00', handoverDays: undefined },
    work: [{ rule: 'FREQ=DAILY', from: '2027-01-02', start: '08:00', end: '09:00' }],
    mixes: [{ ...mixes[0]!, demouldMinutes: 600 }],
    moulds: [moulds[0]!],
    ...changes,
  });
};

/** Within four standard errors of a share of so many draws. */
const isNear = (by: number, share: number): boolean =>
  Math.abs(by / DRAWS - share) <= 4 * Math.sqrt((share * (1 - share)) / DRAWS);

const byDay = (odds: ReturnType<typeof dateOdds>, on: string): number =>
  odds!.days.filter((day) => day.on <= on).at(-1)?.by ?? 0;

describe('odds of a date, beside closed forms', () => {
  /*
   * Three pieces in one mould, one a day, 1 in 5 not good. Poured on the 8th, 9th and 10th, out the mornings after: ready on the
   * 11th if all are good, and a day later for each that is not. Negative binomial: 0.8^3 = 0.512 on the 11th, 3 * 0.2 * 0.512 =
   * 0.3072 on the 12th, 6 * 0.04 * 0.512 = 0.12288 on the 13th: by then 0.512, 0.8192, 0.94208.
   */
  test('one mould, three pieces, rejects: the negative binomial', () => {
    const yard = daily({ orders: [{ id: 'a', lines: [{ casting: 'panel-900', quantity: 3 }] }] });
    const odds = dateOdds({ yard, order: 'a', record: recordOf(0.2, 0), draws: DRAWS });
    expect(odds?.days[0]?.on).toBe('2027-04-11');
    const shares = [0.512, 0.8192, 0.94208].map((share, i) => isNear(byDay(odds, `2027-04-${11 + i}`), share));
    expect(shares).toEqual([true, true, true]);
    expect([dayWith(odds!, 0.5), dayWith(odds!, 0.9)]).toEqual(['2027-04-11', '2027-04-13']);
    expect(odds).toMatchObject({ draws: DRAWS, isEnough: true, dependsOn: { kind: 'pieces', what: '900 no. 1' } });
  });

  /*
   * A piece that is in its mould has to come out, and 3 days in 10 are lost: geometric, 0.7 by the 8th, 0.91 by the 9th, 0.973
   * by the 10th.
   */
  test('one session, days lost: the geometric', () => {
    const yard = daily({
      orders: [{ id: 'a', lines: [{ casting: 'panel-900', quantity: 1 }] }],
      inMould: [{ mould: '900 no. 1', casting: 'panel-900', filledAt: '2027-04-06T08:00:00+01:00' }],
    });
    const odds = dateOdds({ yard, order: 'a', record: recordOf(0, 0.3), draws: DRAWS });
    const shares = [0.7, 0.91, 0.973].map((share, i) =>
      isNear(byDay(odds, `2027-04-${String(8 + i).padStart(2, '0')}`), share),
    );
    expect(shares).toEqual([true, true, true]);
    expect(odds!.dependsOn).toEqual({ kind: 'sessions', what: '' });
  });

  /*
   * What is to be bought comes on the 12th, and all deliveries are late, by 2 days or by 5, each as likely: poured on the 14th or the 17th.
   */
  test('late deliveries', () => {
    const { materials } = smallYard();
    const yard = daily({
      orders: [{ id: 'a', lines: [{ casting: 'panel-900', quantity: 1 }] }],
      materials: [{ ...materials[0]!, onHand: 0, supplier: 'Grocer' }, materials[1]!],
      incoming: [{ material: 'mortar', quantity: 3, on: '2027-04-12' }],
    });
    const daysLate = [2, 5].flatMap((days) => Array<number>(5000).fill(days));
    const record = { ...recordOf(0, 0), deliveries: [{ supplier: 'Grocer', of: 10_000, daysLate }] };
    const odds = dateOdds({ yard, order: 'a', record, draws: DRAWS });
    expect(odds!.days.map(({ on }) => on).filter((on) => on > '2027-04-13')).toEqual(['2027-04-15', '2027-04-18']);
    expect(isNear(byDay(odds, '2027-04-15'), 0.5)).toBe(true);
    expect(odds!.dependsOn).toEqual({ kind: 'deliveries', what: 'Grocer' });
  });

  test('nothing that goes wrong: the day of the plan, always', () => {
    const yard = daily({ orders: [{ id: 'a', lines: [{ casting: 'panel-900', quantity: 3 }] }] });
    const odds = dateOdds({ yard, order: 'a', record: recordOf(0, 0), draws: 50 });
    expect(odds).toMatchObject({ days: [{ on: '2027-04-11', by: 50 }], dependsOn: null });
  });

  test('an order that cannot be made has none, and guesses do for no promise', () => {
    const tooMany = daily({ orders: [{ id: 'a', lines: [{ casting: 'panel-900', quantity: 500 }] }] });
    expect(dateOdds({ yard: tooMany, order: 'a', record: recordOf(0, 0) })).toBeNull();
    const none: YardRecord = { pieces: [], sessions: { bad: 0, of: 0 }, deliveries: [] };
    expect(dateOdds({ yard: smallYard(), order: '27-001', record: none, draws: 20 })).toMatchObject({
      ...{ isEnough: false, restsOn: { pieces: 0, sessions: 0, deliveries: 0 } },
    });
  });
});

describe('the seed', () => {
  const yard = daily({ orders: [{ id: 'a', lines: [{ casting: 'panel-900', quantity: 3 }] }] });
  const of = (seed: number, draws = 400) => dateOdds({ yard, order: 'a', record: recordOf(0.2, 0.05), draws, seed });

  test('the same gives the same', () => expect(of(3)).toEqual(of(3)));

  // Ready by the 12th with 400 draws each: other seeds are apart by chance alone, of which four standard errors are 0.1.
  test('another one gives another, no further off than 400 draws can be', () => {
    const by = [1, 2, 3, 4, 5].map((seed) => byDay(of(seed), '2027-04-12') / 400);
    expect(new Set(by).size).toBeGreaterThan(1);
    expect(Math.max(...by) - Math.min(...by)).toBeLessThan(0.1);
  });
});
