import { describe, expect, test } from 'vitest';
import { TASK_KINDS } from '../../../shared/work.ts';
import { Hands, type Task } from '../../../src/engine/book/hands.ts';
import type { Session } from '../../../src/engine/calendar/sessions.ts';

/** Minutes 100 to 200 of one day, two people, from 160 one. */
const session = (changes: Partial<Session> = {}): Session => ({
  ...{ start: 100, end: 200, from: 100, to: 200, wetUntil: 100, day: 0 },
  windows: [
    { start: 100, end: 160, crew: 2, allows: [...TASK_KINDS] },
    { start: 160, end: 200, crew: 1, allows: [...TASK_KINDS] },
  ],
  ...changes,
});
const task = (start: number, minutes: number, changes: Partial<Task> = {}): Task => ({
  ...{ kind: 'prep', start, minutes, people: 1 },
  ...changes,
});

describe('the first minute with room for a task', () => {
  test('is its own where there is nobody else, up to the end of the session and no further', () => {
    const hands = new Hands(session(), 1);
    expect(hands.earliest(task(100, 10))).toBe(100);
    expect(hands.earliest(task(90, 10))).toBe(100);
    expect(hands.earliest(task(190, 10))).toBe(190);
    expect(hands.earliest(task(191, 10))).toBeNull();
  });

  test('is after pieces were kept wet where one person alone is there', () => {
    const wet = session({ wetUntil: 120, windows: [{ start: 100, end: 200, crew: 1, allows: [...TASK_KINDS] }] });
    expect(new Hands(wet, 1).earliest(task(100, 10))).toBe(120);
    expect(new Hands(session({ wetUntil: 120 }), 1).earliest(task(100, 10))).toBe(100);
  });

  test('is after what the people it needs are busy with', () => {
    const hands = new Hands(session(), 1);
    hands.take(task(110, 20), 110);
    expect(hands.earliest(task(110, 10))).toBe(110);
    expect(hands.earliest(task(110, 10, { people: 2 }))).toBe(130);
    expect(hands.earliest(task(110, 40, { people: 2 }))).toBeNull();
  });

  test('waits for a mixer, only for as long as one mixes', () => {
    const batch = (start: number) => task(start, 20, { kind: 'batch', mixMinutes: 8 });
    const hands = new Hands(session(), 1);
    hands.take(batch(100), 100);
    expect(hands.earliest(batch(100))).toBe(108);
    const two = new Hands(session(), 2);
    two.take(batch(100), 100);
    expect(two.earliest(batch(100))).toBe(100);
  });

  test('is one at which such work is allowed', () => {
    const windows = [
      { start: 100, end: 160, crew: 1, allows: ['strip' as const] },
      { start: 160, end: 200, crew: 1, allows: [...TASK_KINDS] },
    ];
    const hands = new Hands(session({ windows }), 1);
    expect(hands.earliest(task(100, 10, { kind: 'strip' }))).toBe(100);
    expect(hands.earliest(task(100, 10))).toBe(160);
  });
});

test('what began before the session takes its people until it ends', () => {
  const hands = new Hands(session({ windows: [{ start: 100, end: 200, crew: 1, allows: [...TASK_KINDS] }] }), 1);
  hands.take(task(90, 20), 90);
  expect(hands.earliest(task(100, 10))).toBe(110);
});
