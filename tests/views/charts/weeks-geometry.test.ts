import { expect, test } from 'vitest';
import { type WeeksColumn, weeksGeometry } from '../../../views/charts/weeks-geometry.ts';

const sizes = { width: 100, flagLine: 10, column: 40, days: 12, mark: 16, widest: 1000 };
const none = { flags: [], marks: [] };
const column = (day: number, moulds = 0, hands = 0): WeeksColumn => ({ day, moulds, hands });

test('columns share the width, and are filled from below by what is taken', () => {
  const { columns, groundY, height } = weeksGeometry([column(4, 0.5, 1), column(6)], none, sizes);
  expect(columns).toEqual([
    {
      all: { x: 5, y: 0, width: 40, height: 40 },
      moulds: { x: 5, y: 20, width: 20, height: 20 },
      hands: { x: 25, y: 0, width: 20, height: 40 },
    },
    {
      all: { x: 55, y: 0, width: 40, height: 40 },
      moulds: { x: 55, y: 40, width: 20, height: 0 },
      hands: { x: 75, y: 40, width: 20, height: 0 },
    },
  ]);
  expect([groundY, height]).toEqual([40, 52]);
});

test('a flag stands in its column, or behind the last one before it; each has a line of its own', () => {
  const { flags, groundY } = weeksGeometry([column(4), column(6)], { flags: [6, 9, 5, 1], marks: [] }, sizes);
  expect(flags.map(({ x }) => x)).toEqual([75, 100, 50, 0]);
  expect(flags.map(({ y }) => y)).toEqual([10, 20, 30, 40]);
  expect(groundY).toBe(80);
});

test('marks of one day stand below each other, others beside each other', () => {
  const { marks, height } = weeksGeometry([column(4), column(6)], { flags: [], marks: [4, 4, 6] }, sizes);
  expect(marks).toEqual([
    { x: 25, y: 60 },
    { x: 25, y: 76 },
    { x: 75, y: 60 },
  ]);
  expect(height).toBe(84);
});

test('a share beyond all there is fills its column, and no column is wider than the widest', () => {
  const { columns } = weeksGeometry([column(4, 3, -1)], none, { ...sizes, widest: 20 });
  expect(columns[0]).toMatchObject({ all: { width: 16 }, moulds: { height: 40 }, hands: { height: 0 } });
});

test('weeks are named by their first column where there is room', () => {
  // Mondays are day 4 and day 11.
  const days = [4, 8, 10, 11, 13, 18];
  const { weeks } = weeksGeometry(
    days.map((day) => column(day)),
    none,
    { ...sizes, width: 120 },
  );
  expect(weeks.map((week) => week.column)).toEqual([0, 3]);
});

test('nothing to draw is an empty drawing', () => {
  expect(weeksGeometry([], none, sizes)).toMatchObject({ columns: [], weeks: [], height: 52 });
});
