import { describe, expect, test } from 'vitest';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFileInput } from '../../../shared/yard-file.ts';
import { completeOrder, packWaiting } from '../../../src/engine/decoder/complete.ts';
import type { DecoderState } from '../../../src/engine/decoder/decoder-state.ts';
import { NONE } from '../../../src/engine/decoder/problem.ts';
import { begunDecoder, enterShift } from '../../support/begun-decoder.ts';
import { smallYard } from '../../support/small-yard.ts';

const base = smallYard();
const text = (minute: number | undefined) =>
  minute === NONE ? 'no' : new Date((minute! + 60) * 60_000).toISOString().slice(5, 16).replace('T', ' ');
const minute = (at: string) => minuteOf(`2027-${at.replace(' ', 'T')}:00+01:00`);

/** Two finished panels for the pair that is ordered; packing it takes five minutes. */
const begun = (more: Partial<YardFileInput> = {}): DecoderState =>
  begunDecoder(smallYard({ finished: [{ casting: 'panel-900', count: 2 }], ...more }));
const single = [{ id: 'a', due: '2027-04-10', lines: [{ casting: 'panel-900', quantity: 2 }] }];

describe('an order that is not packed', () => {
  test('is complete when its last piece is ready', () => {
    const finished = [
      { casting: 'panel-900', count: 1 },
      { casting: 'panel-900', count: 1, readyAt: '2027-04-09T14:00:00+01:00' },
    ];
    const state = begun({ finished, orders: single });
    expect([text(state.orders.completesAt[0]), text(state.orders.packStart[0])]).toEqual(['04-09 14:00', 'no']);
    expect(state.orders.open).toBe(0);
  });

  // What is set aside for it is taken first, and what is free after it: the last one taken is not the last one ready.
  test('also when that is not the last one it takes', () => {
    const finished = [
      { casting: 'panel-900', count: 1, order: 'a', readyAt: '2027-04-09T14:00:00+01:00' },
      { casting: 'panel-900', count: 1 },
    ];
    expect(text(begun({ finished, orders: single }).orders.completesAt[0])).toBe('04-09 14:00');
  });

  test('or when its last part is there', () => {
    const orders = [{ id: 'a', lines: [...single[0]!.lines, { material: 'mortar', quantity: 21 }] }];
    const state = begun({ orders, incoming: [{ material: 'mortar', quantity: 1, on: '2027-04-12' }] });
    expect(text(state.orders.completesAt[0])).toBe('04-12 00:00');
  });

  test('not when that is after the horizon', () => {
    const orders = [{ id: 'a', lines: [...single[0]!.lines, { material: 'mortar', quantity: 21 }] }];
    const yard = { ...base.yard, horizonDays: 3 };
    const state = begun({ yard, orders, incoming: [{ material: 'mortar', quantity: 1, on: '2027-04-12' }] });
    expect([text(state.orders.completesAt[0]), state.orders.open]).toEqual(['no', 1]);
  });
});

describe('an order that is packed', () => {
  test('waits for a session', () => {
    const state = begun();
    expect([state.orders.waiting, text(state.orders.completesAt[0])]).toEqual([[0], 'no']);
  });

  test('is packed as soon as someone is free', () => {
    const state = begun();
    packWaiting(state, false);
    expect([text(state.orders.packStart[0]), text(state.orders.completesAt[0])]).toEqual([
      '04-10 08:00',
      '04-10 08:05',
    ]);
    expect([state.orders.waiting, state.orders.open]).toEqual([[], 0]);
  });

  // It is handed over on Saturdays: packed a week later it would be a week late. The early hours stay free for pours.
  test('when it cannot wait, as late in the session as it fits', () => {
    const state = begun();
    packWaiting(state, true);
    expect([text(state.orders.packStart[0]), text(state.orders.completesAt[0])]).toEqual([
      '04-10 11:55',
      '04-10 12:00',
    ]);
  });

  // Handed over on Sundays, and there are hours on Sunday too: packed then it is no later.
  test('when it can wait it is left for later', () => {
    const state = begun({
      extra: [{ date: '2027-04-11', start: '08:00', end: '12:00' }],
      yard: { ...base.yard, handoverDays: ['SU'] },
    });
    packWaiting(state, true);
    expect(text(state.orders.completesAt[0])).toBe('no');
    enterShift(state, 1);
    packWaiting(state, true);
    expect(text(state.orders.completesAt[0])).toBe('04-11 12:00');
  });

  test('not before its parts are there', () => {
    const state = begun({ materials: base.materials.map((m) => (m.id === 'rod' ? { ...m, onHand: 0 } : m)) });
    packWaiting(state, false);
    expect(text(state.orders.completesAt[0])).toBe('no');
    // Bought with three days to wait, the rod is there on Sunday; the session after that is a week later.
    enterShift(state, 1);
    packWaiting(state, false);
    expect(text(state.orders.packStart[0])).toBe('04-17 08:00');
  });

  test('one after the other in the order of the sequence', () => {
    const kit = (id: string, due: string) => ({ id, due, lines: [{ kit: 'pair', quantity: 1 }] });
    const state = begun({
      finished: [{ casting: 'panel-900', count: 4 }],
      orders: [kit('a', '2027-04-10'), kit('b', '2027-04-10')],
    });
    state.orders.waiting.reverse();
    packWaiting(state, false);
    expect([...state.orders.packStart].map(text)).toEqual(['04-10 08:00', '04-10 08:05']);
  });

  test('the last minute of the session will do, one less will not', () => {
    const state = begun();
    state.orders.readyAt[0] = minute('04-10 11:55');
    packWaiting(state, false);
    expect(text(state.orders.completesAt[0])).toBe('04-10 12:00');
    const late = begun();
    late.orders.readyAt[0] = minute('04-10 11:56');
    packWaiting(late, false);
    expect(late.orders.waiting).toEqual([0]);
  });
});

// The session goes on to midnight, where the horizon ends: what is done then is done after it.
test('an order is packed before the horizon ends, or not at all', () => {
  const night = {
    yard: { ...base.yard, horizonDays: 2 },
    work: [{ ...base.work[0]!, end: '24:00' }],
  };
  const at = begun(night);
  packWaiting(at, true);
  expect(text(at.orders.completesAt[0])).toBe('04-10 23:59');
  const late = begun(night);
  late.orders.readyAt[0] = minute('04-10 23:55');
  packWaiting(late, false);
  expect(late.orders.waiting).toEqual([0]);
});

test('an order whose pieces come later is complete then', () => {
  const state = begun({ orders: single });
  Object.assign(state.orders, { open: 1 });
  state.orders.readyAt[0] = minute('04-11 10:00');
  completeOrder(state, 0);
  expect([text(state.orders.completesAt[0]), state.orders.open]).toEqual(['04-11 10:00', 0]);
});
