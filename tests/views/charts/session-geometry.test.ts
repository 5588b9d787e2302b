import { expect, test } from 'vitest';
import { type SessionSizes, sessionGeometry } from '../../../views/charts/session-geometry.ts';

const SIZES: SessionSizes = { width: 220, side: 10, head: 20, lane: 40, work: 6, mix: 14, ground: 18 };
const lane = (start: number, end: number, ...spells: [number, number, boolean?][]) => ({
  ...{ start, end },
  spells: spells.map(([from, to, mix = false]) => ({ start: from, end: to, mix })),
});
const drawn = (...[hours, lanes]: [Parameters<typeof sessionGeometry>[0], ReturnType<typeof lane>[]]) =>
  sessionGeometry(hours, lanes, SIZES);

test('work is as wide as it is long, and stands on the line of its lane', () => {
  const { lanes, width, height } = drawn({ start: 480, end: 580, now: null }, [
    lane(480, 580, [490, 505], [505, 530, true]),
    lane(500, 560),
  ]);
  expect([width, height]).toEqual([220, 100]);
  expect(lanes).toEqual([
    {
      ...{ x: 10, width: 200, y: 38 },
      spells: [
        { x: 30, width: 30, y: 32, height: 6 },
        { x: 60, width: 50, y: 24, height: 14 },
      ],
    },
    { x: 50, width: 120, y: 78, spells: [] },
  ]);
});

test('full hours stand where they are, those at the edges too', () => {
  const hours = (start: number, end: number) => drawn({ start, end, now: null }, []).hours.map(({ minute }) => minute);
  expect(hours(480, 600)).toEqual([480, 540, 600]);
  expect(hours(490, 599)).toEqual([540]);
  expect(hours(545, 590)).toEqual([]);
});

test('the clock is drawn only within the session', () => {
  const nowX = (now: number | null) => drawn({ start: 480, end: 580, now }, []).nowX;
  expect([nowX(479), nowX(480), nowX(530), nowX(580), nowX(581), nowX(null)]).toEqual([null, 10, 110, 210, null, null]);
});

test('work that reaches beyond the session is drawn as far as the session goes', () => {
  expect(drawn({ start: 480, end: 580, now: null }, [lane(480, 580, [470, 490], [570, 600])]).lanes[0]?.spells).toEqual(
    [
      { x: 10, width: 20, y: 32, height: 6 },
      { x: 190, width: 20, y: 32, height: 6 },
    ],
  );
});
