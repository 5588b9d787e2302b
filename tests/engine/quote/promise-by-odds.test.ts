import { describe, expect, test } from 'vitest';
import type { PromiseOdds } from '../../../shared/promise-odds.ts';
import type { YardRecord } from '../../../shared/yard-record.ts';
import { quoteOrder } from '../../../src/engine/quote/quote.ts';
import { smallYard } from '../../support/small-yard.ts';

const MANY = 100_000;

/** So well known that what is drawn of it is the share itself. */
const recordOf = (lost: number): YardRecord => ({
  pieces: [{ mould: '900 no. 1', casting: 'panel-900', of: MANY, mend: 0, scrap: 0 }],
  sessions: { bad: Math.round(lost * MANY), of: MANY },
  deliveries: [],
});

const quoted = (record: YardRecord | undefined, promiseOdds?: PromiseOdds) => {
  const { yard } = smallYard();
  const asked = { ...yard, sessionsInHand: 2, ...(promiseOdds ? { promiseOdds } : {}) };
  const order = { id: 'asked', weight: 1, lines: [{ kit: 'pair', quantity: 1 }] };
  return quoteOrder(smallYard({ yard: asked, orders: [], ...(record ? { record } : {}) }), order);
};

/*
 * Two panels are poured, stripped and packed on one Saturday, the 10th, 17th or 24th. One Saturday in seven is lost: ready on the
 * 10th in 0.857 of all cases, by the 17th in 0.980 (geometric).
 */
describe('a date to promise by a record', () => {
  test.each([
    [0.5, '2027-04-10'],
    [0.8, '2027-04-10'],
    [0.9, '2027-04-17'],
    [0.95, '2027-04-17'],
    [undefined, '2027-04-17'],
  ] as const)('with %s is the first day that is kept so often', (odds, on) => {
    const quote = quoted(recordOf(1 / 7), odds);
    expect(quote).toMatchObject({ earliestOn: '2027-04-10', promiseOn: on });
    expect(quote.odds?.map((one) => one.on)).toEqual(['2027-04-10', '2027-04-10', '2027-04-17', '2027-04-17']);
  });

  test('goes by sessions in hand where there is no record, or too little of one', () => {
    const little = { ...recordOf(0.2), pieces: [{ mould: 'm', casting: 'c', of: 199, mend: 0, scrap: 0 }] };
    for (const record of [undefined, little]) {
      const quote = quoted(record);
      expect(quote).toMatchObject({ earliestOn: '2027-04-10', promiseOn: '2027-04-24' });
      expect(quote.odds).toBeUndefined();
    }
  });

  test('goes by sessions in hand where no day that is planned is kept so often, and is never earlier than the plan', () => {
    expect(quoted(recordOf(0.99)).promiseOn).toBe('2027-04-24');
    expect(quoted(recordOf(0)).promiseOn).toBe('2027-04-10');
  });
});
