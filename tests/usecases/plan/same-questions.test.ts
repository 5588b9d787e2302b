import { describe, expect, test } from 'vitest';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { asOf } from '../../../src/engine/book/as-of.ts';
import { calendarOf } from '../../../src/engine/calendar/calendar.ts';
import { quoteOrder } from '../../../src/engine/quote/quote.ts';
import { sameQuestions } from '../../../src/usecases/plan/same-questions.ts';
import { yardSeeds } from '../../support/property-seed.ts';
import { randomYard } from '../../support/random-yard.ts';
import { smallYard } from '../../support/small-yard.ts';

const minutesOn = (yard: YardFile, minutes: number): YardFile =>
  asOf(yard, calendarOf(yard.yard.timeZone).instantText(minuteOf(yard.yard.now) + minutes));

const kinds = ['small', 'odd', 'tight-rack'] as const;
const yards = kinds.flatMap((kind) => yardSeeds(2, 30).map((seed) => ({ kind, seed })));

test('where questions are said to be the same, so are their answers', { timeout: 300_000 }, () => {
  let same = 0;
  for (const { kind, seed } of yards) {
    const yard = randomYard(seed, kind);
    const kit = yard.kits[0];
    if (!kit) continue;
    const order = { id: 'asked about', weight: 3, lines: [{ kit: kit.id, quantity: 1 }] };
    for (const minutes of [1, 45, 190]) {
      const later = minutesOn(yard, minutes);
      if (!sameQuestions({ yard }, { yard: later })) continue;
      same += 1;
      expect(quoteOrder(later, order, {}), `${kind} ${seed}, ${minutes} minutes on`).toEqual(
        quoteOrder(yard, order, {}),
      );
    }
  }
  expect(same).toBeGreaterThan(5);
});

/* The small yard is worked on Saturdays from 8:00 on; its now is Thursday 8 April 2027, 9:00. */
describe('questions are other ones', () => {
  const yard = smallYard();
  const isSame = (before: YardFile, then: YardFile): boolean => sameQuestions({ yard: before }, { yard: then });
  const at = (now: string, over: Partial<YardFile> = {}): YardFile => ({
    ...yard,
    ...over,
    yard: { ...yard.yard, now },
  });
  const [morning, noon] = ['2027-04-08T09:00:00+01:00', '2027-04-08T12:00:00+01:00'];

  test('the same on a day on which nobody works', () => {
    expect(isSame(at(morning), at(noon))).toBe(true);
  });

  test('on another day, while somebody works, and where the clock went back', () => {
    expect(isSame(at(morning), at('2027-04-09T09:00:00+01:00'))).toBe(false);
    expect(isSame(at('2027-04-10T09:00:00+01:00'), at('2027-04-10T09:01:00+01:00'))).toBe(false);
    expect(isSame(at('2027-04-10T07:00:00+01:00'), at('2027-04-10T09:01:00+01:00'))).toBe(false);
    expect(isSame(at(noon), at(morning))).toBe(false);
  });

  test('where a piece got ready, a mould dry or a delivery came in between', () => {
    const casting = yard.castings[0]!.id;
    const ready = { finished: [{ casting, count: 1, readyAt: '2027-04-08T10:00:00+01:00' }] };
    expect(isSame(at(morning, ready), at(noon, ready))).toBe(false);
    const moulds = yard.moulds.map((mould) => ({ ...mould, dryFrom: '2027-04-08T10:00:00+01:00' }));
    expect(isSame(at(morning, { moulds }), at(noon, { moulds }))).toBe(false);
  });

  test('where anything else is another, of the yard or of the plan that stands', () => {
    const moulds = yard.moulds.map((mould) => ({ ...mould, turnsSinceOil: 3 }));
    expect(isSame(at(morning), at(noon, { moulds }))).toBe(false);
    const standing = { batches: [], pours: [] };
    expect(sameQuestions({ yard: at(morning) }, { yard: at(noon), standing })).toBe(false);
  });
});
