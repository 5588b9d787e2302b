import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { NEVER } from '../../../src/engine/decoder/problem.ts';
import { Rack } from '../../../src/engine/decoder/rack.ts';

describe('a rack of three spaces', () => {
  // Two spaces until minute 50, one until minute 80.
  const rack = new Rack(3, 10);
  rack.put(50, 2);
  rack.put(80, 1);

  test('is full until the first piece is ready', () => {
    expect(rack.roomFrom(10, 200, 1)).toBe(50);
    expect(rack.roomFrom(10, 200, 2)).toBe(50);
    expect(rack.roomFrom(10, 200, 3)).toBe(80);
    expect(rack.roomFrom(60, 200, 1)).toBe(60);
  });

  test('a piece that is ready first stays in its mould until then and takes no room', () => {
    expect(rack.roomFrom(10, 40, 1)).toBe(40);
    expect(rack.roomFrom(45, 40, 1)).toBe(45);
  });

  test('one too large for the rack cures in its mould', () => {
    expect(rack.roomFrom(10, 200, 4)).toBe(200);
  });

  test('one that takes no space needs none', () => {
    expect(rack.roomFrom(10, 200, 0)).toBe(10);
  });

  test('what is put last can be taken back, and what is ready is forgotten', () => {
    const other = new Rack(3, 10);
    other.put(50, 2);
    other.put(80, 1);
    other.put(90, 0);
    other.takeBack(0);
    other.takeBack(1);
    expect(other.roomFrom(10, 200, 1)).toBe(10);
    other.put(80, 1);
    other.clearReady(50);
    expect(other.save()).toEqual({ readyAt: Int32Array.of(80), spaces: Int32Array.of(1) });
  });

  test('a saved state comes back as it was', () => {
    const other = new Rack(3, 10);
    other.put(50, 3);
    const saved = other.save();
    other.reset();
    expect(other.roomFrom(10, 200, 1)).toBe(10);
    other.restore(saved);
    expect(other.roomFrom(10, 200, 1)).toBe(50);
  });
});

test('a yard without a limit always has room', () => {
  const rack = new Rack(NEVER, 0);
  rack.put(50, 100);
  expect(rack.roomFrom(10, 200, 1000)).toBe(10);
});

const lying = fc.record({ readyAt: fc.integer({ min: 0, max: 30 }), spaces: fc.integer({ min: 1, max: 3 }) });

test('room is where trying every minute finds it', () => {
  fc.assert(
    fc.property(
      fc.array(lying, { maxLength: 6 }),
      fc.integer({ min: 0, max: 6 }),
      fc.integer({ min: 0, max: 30 }),
      fc.integer({ min: 0, max: 40 }),
      fc.integer({ min: 1, max: 3 }),
      (pieces, limit, from, curedAt, spaces) => {
        const rack = new Rack(limit, pieces.length);
        for (const x of pieces) rack.put(x.readyAt, x.spaces);
        const used = (t: number) => pieces.reduce((n, x) => (x.readyAt > t ? n + x.spaces : n), spaces);
        let expected = from;
        while (expected < curedAt && used(expected) > limit) expected++;
        expect(rack.roomFrom(from, curedAt, spaces)).toBe(expected);
      },
    ),
    { numRuns: 400 },
  );
});
