import { describe, expect, test } from 'vitest';
import type { WorkRecord } from '../../../shared/work-record.ts';
import { beliefsOf } from '../../../src/engine/odds/beliefs.ts';
import { shareOf } from '../../../src/engine/odds/beta.ts';
import { type CalledOff, type CameOn, yardRecordOf } from '../../../src/engine/odds/yard-record.ts';

const DUBLIN = { timeZone: 'Europe/Dublin', today: '2027-04-30' };

const stripped = (mould: string, at: string, cameOut: 'good' | 'mend' | 'scrap' = 'good'): WorkRecord => ({
  ...{ kind: 'stripped', mould, casting: mould.split(' ')[0]!, at, filledAt: '2027-04-01T08:00:00Z', cameOut },
});

const recordOf = (records: WorkRecord[], calledOff: CalledOff[] = [], came: CameOn[] = []) =>
  yardRecordOf(records, { calledOff, came }, DUBLIN);

describe('what a record comes to', () => {
  test('pieces by mould and casting, with how they came out', () => {
    const { pieces } = recordOf([
      stripped('900 no. 1', '2027-04-02T08:00:00Z'),
      stripped('900 no. 1', '2027-04-03T08:00:00Z', 'scrap'),
      stripped('900 no. 2', '2027-04-03T09:00:00Z', 'mend'),
    ]);
    expect(pieces).toEqual([
      { mould: '900 no. 1', casting: '900', of: 2, mend: 0, scrap: 1 },
      { mould: '900 no. 2', casting: '900', of: 1, mend: 1, scrap: 0 },
    ]);
  });

  // 23:30 UTC on the 2nd is the 3rd in Dublin: two days with work, not three.
  test('days with work by the yard’s own clock, and of those called off the ones that were at hand', () => {
    const records = [
      stripped('900 no. 1', '2027-04-02T23:30:00Z'),
      stripped('900 no. 1', '2027-04-03T08:00:00Z'),
      stripped('900 no. 1', '2027-04-05T08:00:00Z'),
    ];
    const calledOff = [
      { date: '2027-04-10', at: '2027-04-10T07:00:00Z' },
      { date: '2027-04-12', at: '2027-04-11T20:00:00Z' },
      // Known two days before: a day off.
      { date: '2027-04-17', at: '2027-04-15T20:00:00Z' },
      // Worked after all, and still to come.
      { date: '2027-04-05', at: '2027-04-05T06:00:00Z' },
      { date: '2027-04-30', at: '2027-04-30T06:00:00Z' },
    ];
    expect(recordOf(records, calledOff).sessions).toEqual({ bad: 2, of: 4 });
  });

  test('deliveries by whom, late after the day that was said first', () => {
    const came = [
      { supplier: 'Grocer', saidFor: '2027-04-02', cameOn: '2027-04-02' },
      { supplier: 'Grocer', saidFor: '2027-04-09', cameOn: '2027-04-15' },
      { supplier: null, saidFor: '2027-04-09', cameOn: '2027-04-08' },
      { supplier: 'Grocer', saidFor: '2027-04-16', cameOn: '2027-04-18' },
    ];
    expect(recordOf([], [], came).deliveries).toEqual([
      { supplier: 'Grocer', of: 3, daysLate: [2, 6] },
      { supplier: null, of: 1, daysLate: [] },
    ]);
  });
});

describe('what is counted on', () => {
  test('is guessed where nothing is on record', () => {
    const beliefs = beliefsOf(recordOf([]));
    expect([beliefs.pieces, beliefs.sessions, beliefs.deliveriesOf('Grocer')].map(shareOf)).toEqual([
      0.05,
      1 / 15,
      expect.closeTo(0.1, 12),
    ]);
    expect(shareOf(beliefs.piecesFrom('900 no. 1', '900'))).toBeCloseTo(0.05, 12);
    expect(beliefs).toMatchObject({ restsOn: { pieces: 0, sessions: 0, deliveries: 0 } });
  });

  /*
   * By hand: 60 of 600 not good, all of one casting, on top of 1 in 20: 61 / 620 of the yard. The casting leans on that with 20
   * turns: (20 * 61 / 620 + 60) / 620. Mould 2 has 50 of 300 of them, mould 1 10 of 300, mould 3 none of none.
   */
  test('a mould leans on its casting, a casting on the yard', () => {
    const pieces = [
      { mould: '900 no. 1', casting: '900', of: 300, mend: 4, scrap: 6 },
      { mould: '900 no. 2', casting: '900', of: 300, mend: 0, scrap: 50 },
    ];
    const beliefs = beliefsOf({ pieces, sessions: { bad: 0, of: 0 }, deliveries: [] });
    const casting = ((20 * 61) / 620 + 60) / 620;
    expect(shareOf(beliefs.piecesOf('900'))).toBeCloseTo(casting, 12);
    expect(shareOf(beliefs.piecesFrom('900 no. 1', '900'))).toBeCloseTo((20 * casting + 10) / 320, 12);
    expect(shareOf(beliefs.piecesFrom('900 no. 2', '900'))).toBeCloseTo((20 * casting + 50) / 320, 12);
    expect(shareOf(beliefs.piecesFrom('900 no. 3', '900'))).toBeCloseTo(casting, 12);
  });
});
