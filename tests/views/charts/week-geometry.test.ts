import { expect, test } from 'vitest';
import { type WeekHours, weekGeometry } from '../../../views/charts/week-geometry.ts';

const sizes = { width: 110, left: 10, head: 20, person: 10, gap: 4 };
const hours = (start: number, end: number, people = 1): WeekHours => ({ start: start * 60, end: end * 60, people });

test('people who are there at once stand on each other, others on the ground', () => {
  const { days, clock, height } = weekGeometry(
    [[hours(8, 12), hours(9, 10, 2), hours(12, 13)], [], [hours(8, 9)]],
    sizes,
  );
  expect(clock).toEqual([
    { minute: 480, x: 10 },
    { minute: 600, x: 50 },
    { minute: 720, x: 90 },
  ]);
  expect(days).toEqual([
    {
      y: 20,
      height: 30,
      bars: [
        { x: 10, width: 80, y: 40, height: 10 },
        { x: 30, width: 20, y: 20, height: 20 },
        { x: 90, width: 20, y: 40, height: 10 },
      ],
    },
    { y: 54, height: 10, bars: [] },
    { y: 68, height: 10, bars: [{ x: 10, width: 20, y: 68, height: 10 }] },
  ]);
  expect(height).toBe(78);
});

test('a week without hours has no bar and no fault', () => {
  expect(weekGeometry([[], []], sizes).days.map(({ bars }) => bars)).toEqual([[], []]);
});
