import fc from 'fast-check';
import { beforeEach, describe, expect, test } from 'vitest';
import { BATCH, NONE, PACK, PREP, type Shifts, STRIP } from '../../../src/engine/decoder/problem.ts';
import { Timeline } from '../../../src/engine/decoder/timeline.ts';

const ALL = PREP | BATCH | STRIP | PACK;

/** Shifts whose minutes are given one by one; the second starts a thousand minutes after the first. */
const shiftsOf = (minutes: { people: number; allow: number }[][]): Shifts => {
  const from = Int32Array.from(minutes, (_, s) => 100 + 1000 * s);
  const offset = new Int32Array(minutes.length + 1);
  minutes.forEach((list, s) => {
    offset[s + 1] = offset[s]! + list.length;
  });
  const to = from.map((x, s) => x + minutes[s]!.length);
  const flat = minutes.flat();
  const next = from.map((_, s) => s + 1);
  return {
    count: minutes.length,
    from,
    to,
    sessionEnd: to,
    day: new Int32Array(minutes.length),
    offset,
    people: Uint16Array.from(flat, (x) => x.people),
    mixing: new Uint16Array(flat.length),
    allow: Uint8Array.from(flat, (x) => x.allow),
    nextStrip: next,
    nextPack: next,
  };
};
const hour = (people: number, allow = ALL) => Array.from({ length: 60 }, () => ({ people, allow }));

describe('an hour alone, minutes 100 to 160', () => {
  let timeline: Timeline;
  beforeEach(() => {
    timeline = new Timeline(shiftsOf([hour(1), hour(2)]), 1);
    timeline.enter(0);
  });

  test('a task starts at once, or as late as it still ends in time', () => {
    expect(timeline.earliest(PREP, 12, 1, 0)).toBe(100);
    expect(timeline.earliest(PREP, 12, 1, 130)).toBe(130);
    expect(timeline.latest(PREP, 12, 1, 0)).toBe(148);
    expect(timeline.latest(PREP, 12, 1, 0, 150)).toBe(138);
  });

  test('one that does not fit is not begun', () => {
    expect(timeline.earliest(PREP, 61, 1, 0)).toBe(NONE);
    expect(timeline.earliest(PREP, 12, 1, 149)).toBe(NONE);
    expect(timeline.latest(PREP, 12, 1, 149)).toBe(NONE);
    expect(timeline.earliest(STRIP, 5, 2, 0)).toBe(NONE);
  });

  // Taken from 110 to 120: ten minutes fit before, eleven only after.
  test('goes round what is taken', () => {
    timeline.take(110, 10, 1);
    expect(timeline.earliest(PREP, 10, 1, 0)).toBe(100);
    expect(timeline.earliest(PREP, 11, 1, 0)).toBe(120);
    expect(timeline.latest(PREP, 10, 1, 0, 125)).toBe(100);
  });

  test('a task for nobody needs only the hours', () => {
    timeline.take(100, 60, 1);
    expect(timeline.earliest(BATCH, 10, 0, 0)).toBe(100);
    expect(timeline.earliest(BATCH, 10, 1, 0)).toBe(NONE);
  });

  test('knows from when on someone is free, and again when it is given back', () => {
    timeline.take(100, 20, 1);
    expect(timeline.firstFree).toBe(120);
    timeline.giveBack(100, 20, 1);
    expect(timeline.firstFree).toBe(100);
    expect(timeline.earliest(PREP, 60, 1, 0)).toBe(100);
  });

  test('the next shift is another one, with its own people', () => {
    timeline.take(100, 60, 1);
    timeline.enter(1);
    expect([timeline.from, timeline.to, timeline.firstFree]).toEqual([1100, 1160, 1100]);
    expect(timeline.earliest(STRIP, 5, 2, 0)).toBe(1100);
  });

  // Two people in the second shift, one mixer, taken from 1110 to 1120: a batch that mixes for 10 minutes fits before it by
  // its first minute, or after it.
  test('the only mixer is used by one batch at a time', () => {
    timeline.enter(1);
    timeline.take(1110, 25, 1);
    timeline.takeMixer(1110, 10);
    expect(timeline.batchStart(BATCH, 25, 1, 10, 1100, 1160, false)).toBe(1100);
    expect(timeline.batchStart(BATCH, 25, 1, 10, 1101, 1160, false)).toBe(1120);
    expect(timeline.batchStart(BATCH, 25, 1, 10, 1100, 1140, true)).toBe(1100);
    expect(timeline.batchStart(BATCH, 25, 1, 10, 1101, 1144, true)).toBe(NONE);
  });

  test('without a mixer only what is mixed in no time at all is poured', () => {
    const none = new Timeline(shiftsOf([hour(1)]), 0);
    none.enter(0);
    expect(none.batchStart(BATCH, 25, 1, 10, 100, 160, false)).toBe(NONE);
    expect(none.batchStart(BATCH, 25, 1, 0, 100, 160, false)).toBe(100);
  });
});

const oneMinute = fc.record({ people: fc.integer({ min: 0, max: 3 }), allow: fc.constantFrom(0, STRIP, ALL, ALL) });
const task = fc.record({
  kind: fc.constantFrom(PREP, STRIP),
  minutes: fc.integer({ min: 1, max: 9 }),
  people: fc.integer({ min: 1, max: 3 }),
  from: fc.integer({ min: 90, max: 140 }),
  by: fc.integer({ min: 100, max: 150 }),
});

test('earliest and latest are what trying every minute finds, whatever was taken before', () => {
  fc.assert(
    fc.property(
      fc.array(oneMinute, { minLength: 1, maxLength: 40 }),
      fc.array(task, { maxLength: 12 }),
      (day, tasks) => {
        const timeline = new Timeline(shiftsOf([day]), 1);
        timeline.enter(0);
        const free = day.map((x) => x.people);
        for (const { kind, minutes, people, from, by } of tasks) {
          const starts = day.flatMap((_, i) => {
            const t = 100 + i;
            const whole = t >= from && t + minutes <= Math.min(by, 100 + day.length);
            const open = (k: number) => free[k]! >= people && (day[k]!.allow & kind) !== 0;
            return whole && Array.from({ length: minutes }, (_, k) => i + k).every(open) ? [t] : [];
          });
          expect(timeline.earliest(kind, minutes, people, from, by)).toBe(starts[0] ?? NONE);
          expect(timeline.latest(kind, minutes, people, from, by)).toBe(starts.at(-1) ?? NONE);
          if (starts.length === 0) continue;
          timeline.take(starts[0]!, minutes, people);
          for (let k = 0; k < minutes; k++) free[starts[0]! - 100 + k]! -= people;
        }
      },
    ),
    { numRuns: 300 },
  );
});
