import { describe, expect, test } from 'vitest';
import {
  type OutSpan,
  type TurnSpan,
  type TurnsSizes,
  turnsGeometry,
  wideAs,
} from '../../../views/charts/turns-geometry.ts';

const sizes: TurnsSizes = { turn: 100, session: 80, tail: 20, gap: 10, row: 50, head: 40, band: 8, inset: 2 };
const geometry = (sessions: number, rows: number, turns: TurnSpan[], outs: OutSpan[] = []) =>
  turnsGeometry(sessions, rows, turns, outs, sizes);

describe('columns', () => {
  test('are as wide as their fullest row, and the night between them has one width', () => {
    const { columns, width } = geometry(3, 2, [
      { id: 'a', row: 0, pour: 0, strip: 0 },
      { id: 'b', row: 0, pour: 0, strip: 0 },
      { id: 'c', row: 1, pour: 1, strip: 1 },
    ]);
    // Two boxes; one box; no box, so the least width. 200 + 10, 310 + 10.
    expect(columns).toEqual([
      { x: 0, width: 200 },
      { x: 210, width: 100 },
      { x: 320, width: 80 },
    ]);
    expect(width).toBe(400);
  });

  test('have room for the end of a piece that is stripped in them, beside the boxes of that row', () => {
    const { columns } = geometry(2, 1, [
      { id: 'a', row: 0, pour: 0, strip: 1 },
      { id: 'b', row: 0, pour: 1, strip: 1 },
    ]);
    expect(columns[1]).toEqual({ x: 110, width: 120 });
  });

  test('of nothing take no room', () => {
    expect(geometry(0, 3, [])).toMatchObject({ width: 0, height: 190, columns: [], turns: [], outs: [] });
  });
});

describe('boxes', () => {
  test('stand in their row and session, in order of time, inside their place', () => {
    const { turns, rows } = geometry(1, 2, [
      { id: 'a', row: 1, pour: 0, strip: 0 },
      { id: 'b', row: 1, pour: 0, strip: 0 },
    ]);
    expect(rows).toEqual([
      { y: 40, height: 50 },
      { y: 90, height: 50 },
    ]);
    expect(turns.map(({ id, box }) => [id, box])).toEqual([
      ['a', { x: 2, y: 92, width: 96, height: 46 }],
      ['b', { x: 102, y: 92, width: 96, height: 46 }],
    ]);
  });

  test('come after the end of a piece from before', () => {
    const { turns } = geometry(2, 1, [
      { id: 'a', row: 0, pour: 0, strip: 1 },
      { id: 'b', row: 0, pour: 1, strip: 1 },
    ]);
    // The second session begins at 110; 20 for the end of the first piece, 2 inside.
    expect(turns[1]!.box.x).toBe(132);
  });

  test('of a piece poured before stand in the first session, before its own turns', () => {
    const { turns } = geometry(2, 1, [
      { id: 'a', row: 0, pour: null, strip: 0 },
      { id: 'b', row: 0, pour: 0, strip: 0 },
    ]);
    expect(turns.map(({ box }) => box.x)).toEqual([2, 102]);
  });
});

describe('the band of setting', () => {
  const bandOf = (turn: Omit<TurnSpan, 'id' | 'row'>) => geometry(3, 1, [{ id: 'a', row: 0, ...turn }]).turns[0]!.band;

  test('is the foot of the box when pour and strip are in one session', () => {
    expect(bandOf({ pour: 0, strip: 0 })).toEqual({ x: 2, y: 80, width: 96, height: 8 });
  });

  test('reaches into the session of the strip, over those between', () => {
    // Columns: 0 to 100, 110 to 190, 200 to 280; the tail ends at 220.
    expect(bandOf({ pour: 0, strip: 2 })).toMatchObject({ x: 2, width: 218 });
  });

  test('begins at the left edge for a piece poured before', () => {
    expect(bandOf({ pour: null, strip: 0 })).toMatchObject({ x: 0, width: 98 });
    expect(bandOf({ pour: null, strip: 2 })).toMatchObject({ x: 0, width: 220 });
  });

  test('runs to the right edge while the piece stays in', () => {
    // 100 + 10 + 80 + 10 + 80 in all.
    expect(bandOf({ pour: 0, strip: null })).toMatchObject({ x: 2, width: 278 });
    expect(bandOf({ pour: null, strip: null })).toMatchObject({ x: 0, width: 280 });
  });
});

describe('out of use', () => {
  test('covers the sessions it lasts, and none when it is over before the first', () => {
    const { outs } = geometry(
      3,
      2,
      [],
      [
        { row: 1, from: 0, to: 2 },
        { row: 0, from: 0, to: 0 },
      ],
    );
    expect(outs).toEqual([{ x: 2, y: 92, width: 166, height: 46 }]);
  });
});

describe('as wide as a screen', () => {
  const turns: TurnSpan[] = [
    { id: 'a', row: 0, pour: 0, strip: 1 },
    { id: 'b', row: 0, pour: 0, strip: 1 },
    { id: 'c', row: 1, pour: 1, strip: 1 },
  ];
  const width = (screen: number) => turnsGeometry(3, 2, turns, [], wideAs(screen, [3, 2, turns], sizes)).width;

  test('boxes share what room there is, and sessions without one stay narrow', () => {
    // Two boxes, one box, none: 200 + 10 + 100 + 10 + 80. Of 60 more each of the three boxes has 20.
    expect(width(400)).toBe(400);
    expect(wideAs(460, [3, 2, turns], sizes)).toEqual({ ...sizes, turn: 120 });
    expect(width(460)).toBe(460);
  });

  test('at most half as wide again, and never narrower than they have to be', () => {
    expect(wideAs(2000, [3, 2, turns], sizes).turn).toBe(150);
    expect(wideAs(200, [3, 2, turns], sizes)).toEqual(sizes);
    expect(wideAs(200, [0, 2, []], sizes).turn).toBeGreaterThanOrEqual(100);
  });
});
