import { describe, expect, test } from 'vitest';
import { usualSession } from '../../../src/engine/begin/usual-session.ts';
import { planYard } from '../../../src/engine/plan.ts';
import { smallYard } from '../../support/small-yard.ts';

describe('what a usual session makes', () => {
  /**
   * The small yard: two moulds, one bag fills both, Saturdays 8:00 to 12:00 by one person. Both come set up or full from
   * the Saturday before. Strip 8 + 8, clean and set up 18 + 18, mix 10, fill 7 + 7: done after 76 minutes at most, and
   * again 75 minutes after the fill, which is before noon; a third time it can't be.
   */
  test('two moulds, twice each', () => {
    expect(usualSession(smallYard())).toEqual({ weekday: 'SA', pieces: 4, turns: 2 });
  });

  test('once each, where the evening is short', () => {
    const work = [{ rule: 'FREQ=WEEKLY;BYDAY=WE', from: '2027-01-06', start: '18:00', end: '20:00' }];
    expect(usualSession(smallYard({ work }))).toMatchObject({ weekday: 'WE', pieces: 2, turns: 1 });
  });

  test('of two kinds of session, the one that makes most', () => {
    const yard = smallYard();
    const evening = { rule: 'FREQ=WEEKLY;BYDAY=WE', from: '2027-01-06', start: '18:00', end: '20:00' };
    expect(usualSession(smallYard({ work: [evening, ...yard.work] }))).toMatchObject({ weekday: 'SA', pieces: 4 });
  });

  test('whatever its panels are cut from', () => {
    const yard = smallYard();
    const sheets = [{ material: 'mesh', widthMm: 300, lengthMm: 800, count: 1, mayTurn: true }];
    const castings = yard.castings.map((casting) => ({ ...casting, sheets }));
    expect(usualSession({ ...yard, castings })).toEqual(usualSession(yard));
  });

  test('whatever is in stock, ordered, or fixed', () => {
    const { batches, pours } = planYard(smallYard(), { effort: 'quick' });
    const yard = smallYard({
      finished: [{ casting: 'panel-900', count: 40 }],
      materials: [
        { id: 'mortar', name: 'Fast-setting mortar', unit: 'bag', onHand: 0 },
        { id: 'rod', name: 'Rod 12 mm', unit: 'stick', onHand: 0, stickMm: 3000 },
      ],
      keep: { batches, pours },
    });
    expect(usualSession(yard)).toMatchObject({ pieces: 4 });
  });

  // At 20 °C a panel is stripped after 75 minutes; at 0 °C not within a morning.
  test('by the time of the year it is now, whatever comes after it', () => {
    const colder = { from: '2027-04-09', celsius: 0 };
    expect(usualSession(smallYard({ temperatures: [{ from: '2027-04-01', celsius: 20 }, colder] }))).toMatchObject({
      pieces: 4,
    });
    expect(usualSession(smallYard({ temperatures: [{ from: '2027-04-01', celsius: 0 }] }))).not.toMatchObject({
      pieces: 4,
    });
  });

  test('once a month it is found too', () => {
    const work = [{ rule: 'FREQ=MONTHLY;BYDAY=1SA', from: '2027-01-02', start: '08:00', end: '12:00' }];
    expect(usualSession(smallYard({ work }))).toMatchObject({ weekday: 'SA', pieces: 4, turns: 2 });
  });

  test('nothing, without hours, moulds or anything to cast', () => {
    expect(usualSession(smallYard({ work: [] }))).toBeNull();
    expect(usualSession(smallYard({ moulds: [] }))).toBeNull();
    const tooShort = [{ rule: 'FREQ=WEEKLY;BYDAY=SA', from: '2027-01-02', start: '08:00', end: '08:15' }];
    expect(usualSession(smallYard({ work: tooShort }))).toMatchObject({ pieces: 0, turns: 0 });
  });
});
