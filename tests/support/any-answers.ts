import fc from 'fast-check';
import { WEEKDAYS } from '../../shared/time.ts';
import type { BeginAnswers } from '../../src/engine/begin/begin-yard.ts';

export const ANSWERS: BeginAnswers = {
  ...{ name: 'Our yard', timeZone: 'Europe/Dublin', now: '2027-04-08T09:00:00+01:00' },
  panels: [
    { called: '1200', lengthMm: 1200, moulds: 2 },
    { called: '900', lengthMm: 900, moulds: 2 },
    { called: '600', lengthMm: 600, moulds: 2 },
  ],
  ...{ heightMm: 200, thicknessMm: 35, bag: { pieces: 2, lengthMm: 900 } },
  ...{ cold: { celsius: 10, minutes: 180 }, warm: { celsius: 20, minutes: 90 }, nowCelsius: 15 },
  hours: [{ days: ['SA'], start: '08:00', end: '14:00', people: 1 }],
  minutes: {},
};

const clock = (minutes: number): string =>
  `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`;

const hours = fc
  .record({
    days: fc.uniqueArray(fc.constantFrom(...WEEKDAYS), { minLength: 1, maxLength: 3 }),
    from: fc.integer({ min: 0, max: 1300 }),
    long: fc.integer({ min: 30, max: 600 }),
    people: fc.integer({ min: 1, max: 3 }),
  })
  .map(({ days, from, long, people }) => ({
    ...{ days, people, start: clock(from), end: clock(Math.min(1439, from + long)) },
  }));

const minutesSaid = fc.record(
  {
    working: fc.integer({ min: 8, max: 60 }),
    fill: fc.integer({ min: 1, max: 8 }),
    setUp: fc.integer({ min: 0, max: 40 }),
    clean: fc.integer({ min: 0, max: 20 }),
    strip: fc.integer({ min: 0, max: 30 }),
    mix: fc.integer({ min: 0, max: 30 }),
  },
  { requiredKeys: [] },
);

/** Answers as odd as the form lets them through. */
export const anyAnswers: fc.Arbitrary<BeginAnswers> = fc
  .record({
    panels: fc.uniqueArray(
      fc.record({ lengthMm: fc.integer({ min: 150, max: 3000 }), moulds: fc.integer({ min: 1, max: 6 }) }),
      { minLength: 1, maxLength: 4, selector: ({ lengthMm }) => lengthMm },
    ),
    bagPieces: fc.integer({ min: 1, max: 12 }).map((halves) => halves / 2),
    bagLength: fc.nat(),
    cold: fc.record({ celsius: fc.integer({ min: -5, max: 14 }), minutes: fc.integer({ min: 150, max: 900 }) }),
    warm: fc.record({ celsius: fc.integer({ min: 15, max: 32 }), minutes: fc.integer({ min: 20, max: 150 }) }),
    likeNow: fc.double({ min: 0, max: 1, noNaN: true }),
    hours: fc.array(hours, { minLength: 1, maxLength: 2 }),
    minutes: minutesSaid,
    zone: fc.constantFrom('Europe/Dublin', 'America/Chicago', 'Asia/Kolkata', 'Pacific/Auckland'),
  })
  .map(({ panels, bagPieces, bagLength, cold, warm, likeNow, hours: worked, minutes, zone }) => ({
    ...ANSWERS,
    timeZone: zone,
    panels: panels.map((one) => ({ ...one, called: String(one.lengthMm) })),
    bag: { pieces: bagPieces, lengthMm: panels[bagLength % panels.length]!.lengthMm },
    ...{ cold, warm, minutes, hours: worked },
    nowCelsius: Math.round(cold.celsius + likeNow * (warm.celsius - cold.celsius)),
  }));
