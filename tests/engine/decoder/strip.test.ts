import { describe, expect, test } from 'vitest';
import type { YardFileInput } from '../../../shared/yard-file.ts';
import type { DecoderState } from '../../../src/engine/decoder/decoder-state.ts';
import { NONE } from '../../../src/engine/decoder/problem.ts';
import {
  placeStrip,
  stripAwaited,
  stripRest,
  stripStart,
  takeStrip,
  untakeStrip,
} from '../../../src/engine/decoder/strip.ts';
import { begunDecoder, enterShift } from '../../support/begun-decoder.ts';
import { smallYard } from '../../support/small-yard.ts';

const base = smallYard();
const clock = (minute: number | undefined) =>
  minute === NONE ? 'no' : new Date((minute! + 60) * 60_000).toISOString().slice(11, 16);
const piece = (no: number, filledAt = '2027-04-10T07:30:00+01:00') => ({
  mould: `900 no. ${no}`,
  casting: 'panel-900',
  filledAt,
});

/** Saturday 07:45, both moulds filled at 07:30 and hard 75 minutes later, at 08:45. */
const begun = (more: Partial<YardFileInput> = {}, yard: Partial<YardFileInput['yard']> = {}): DecoderState =>
  begunDecoder(
    smallYard({
      yard: { ...base.yard, now: '2027-04-10T07:45:00+01:00', ...yard },
      inMould: [piece(1), piece(2)],
      ...more,
    }),
  );
const strips = (state: DecoderState) => [...state.placed.firstStripStart].map(clock);
const curing = (cureHours: number, more: Partial<YardFileInput['mixes'][number]> = {}) => [
  { ...base.mixes[0]!, cureHours, ...more },
];

describe('a strip', () => {
  test('starts once the piece is hard', () => expect(clock(stripStart(begun(), 0))).toBe('08:45'));

  // 75 minutes at 20 °C take 75 / 0.5475 = 136.99 at 10 °C (table of maturity factors, Q 5000 K), in whole minutes 137.
  test('later in the cold', () => {
    const state = begun({ temperatures: [{ from: '2027-01-01', celsius: 10 }] });
    expect(clock(stripStart(state, 0))).toBe('09:47');
  });

  test('waits for people', () => {
    const state = begun({ castings: [{ ...base.castings[0]!, stripCrew: 2 }] });
    expect(stripStart(state, 0)).toBe(NONE);
    const late = begun({
      castings: [{ ...base.castings[0]!, stripCrew: 2 }],
      extra: [{ date: '2027-04-10', start: '10:00', end: '11:00' }],
    });
    expect(clock(stripStart(late, 0))).toBe('10:00');
  });

  // Cured four hours after the fill, at 11:30; one space.
  test('waits for room to cure, at the longest until it is cured', () => {
    const state = begun({ mixes: curing(4) }, { rackSpaces: 1 });
    const start = stripStart(state, 0);
    expect(clock(start)).toBe('08:45');
    takeStrip(state, 0, start);
    // Its end, eight minutes on, is when it is cured: 11:22.
    expect(clock(stripStart(state, 1))).toBe('11:22');
    untakeStrip(state, 0, start);
    expect(clock(stripStart(state, 1))).toBe('08:45');
  });
});

describe('once it is written down', () => {
  test('the mould is empty and dirty, the piece is its order\u2019s', () => {
    const state = begun({ mixes: curing(4) });
    const start = stripStart(state, 0);
    takeStrip(state, 0, start);
    placeStrip(state, 0, start);
    expect([state.moulds.held[0], state.moulds.dirty[0], clock(state.moulds.freeAt[0])]).toEqual([NONE, 1, '08:53']);
    expect([clock(state.placed.firstReadyAt[0]), state.placed.firstOrder[0]]).toEqual(['11:30', 0]);
    expect([state.orders.unstripped[0], clock(state.orders.readyAt[0])]).toEqual([1, '11:30']);
  });

  test('the last piece of an order sends it to be packed', () => {
    const state = begun();
    for (const mould of [0, 1]) {
      const start = stripStart(state, mould);
      takeStrip(state, mould, start);
      placeStrip(state, mould, start);
    }
    expect(state.orders.waiting).toEqual([0]);
    expect(clock(state.orders.readyAt[0])).toBe('09:01');
  });
});

describe('what is stripped first', () => {
  test('pieces that an order waits for and nothing else', () => {
    const state = begun();
    stripAwaited(state);
    expect(strips(state)).toEqual(['08:45', '08:53']);
  });

  test('not when more is still to be poured for it', () => {
    const state = begun({ orders: [{ id: 'a', lines: [{ kit: 'pair', quantity: 2 }] }] });
    stripAwaited(state);
    expect(strips(state)).toEqual(['no', 'no']);
  });

  // A week of cure is over on Saturday the 17th at 07:30, before that session; eight days is not.
  test.each([
    [167, ['08:45', '08:53']],
    [192, ['no', 'no']],
  ])('with %d hours of cure: %j', (cureHours, expected) => {
    const state = begun({ mixes: curing(cureHours) });
    stripAwaited(state);
    expect(strips(state)).toEqual(expected);
  });
});

describe('what is stripped with the time left', () => {
  test('everything, also for nobody', () => {
    const state = begun({ orders: [] });
    stripRest(state);
    expect(strips(state)).toEqual(['08:45', '08:53']);
  });

  test('moulds that are wanted again first', () => {
    const long = { ...base.castings[0]!, id: 'long' };
    const state = begun({
      castings: [...base.castings, long],
      moulds: [base.moulds[0]!, { ...base.moulds[1]!, makes: [{ casting: 'panel-900' }, { casting: 'long' }] }],
      orders: [{ id: 'a', lines: [{ casting: 'long', quantity: 1 }] }],
    });
    stripRest(state);
    expect(strips(state)).toEqual(['08:53', '08:45']);
  });

  // With a rack to fill a piece nobody wants out stays in its mould until it is cured; in the last session it is stripped.
  test('where the rack is limited a mould nobody wants keeps its piece', () => {
    const state = begun({ orders: [], mixes: curing(10) }, { rackSpaces: 5 });
    stripRest(state);
    expect(strips(state)).toEqual(['no', 'no']);
    const last = begun({ orders: [], mixes: curing(10) }, { rackSpaces: 5, horizonDays: 3 });
    enterShift(last, 0);
    stripRest(last);
    expect(strips(last)).toEqual(['08:45', '08:53']);
  });
});
