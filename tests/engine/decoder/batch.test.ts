import { describe, expect, test } from 'vitest';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFileInput } from '../../../shared/yard-file.ts';
import { placeBatch } from '../../../src/engine/decoder/batch.ts';
import type { DecoderState } from '../../../src/engine/decoder/decoder-state.ts';
import { NONE } from '../../../src/engine/decoder/problem.ts';
import { weatherFault } from '../../../src/engine/decoder/weather.ts';
import { bagsFor } from '../../../src/engine/pack/bags.ts';
import { begunDecoder } from '../../support/begun-decoder.ts';
import { smallYard } from '../../support/small-yard.ts';

const base = smallYard();
const clock = (minute: number | undefined) => new Date((minute! + 60) * 60_000).toISOString().slice(11, 16);
const begun = (changes: Partial<YardFileInput> = {}): DecoderState => begunDecoder(smallYard(changes));
const filling = (mould: number) => ({ mould, casting: 0, readyAt: 0 });
const both = [filling(0), filling(1)];
const free = (state: DecoderState) => [...state.timeline.free];
const mix = (more: Partial<YardFileInput['mixes'][number]>) => [{ ...base.mixes[0]!, ...more }];

/** Set-ups and fills of all pours placed, and the batch of the first. */
const placed = ({ placed: p }: DecoderState) => ({
  preps: Array.from({ length: p.pours }, (_, i) => `${clock(p.pourPrepStart[i])}-${clock(p.pourPrepEnd[i])}`),
  fills: Array.from({ length: p.pours }, (_, i) => `${clock(p.pourFillStart[i])}-${clock(p.pourFillEnd[i])}`),
  batch: `${clock(p.batchStart[0])}-${clock(p.batchEnd[0])}`,
});

describe('bags for a mass', () => {
  // Yield 27.5 kg a bag: 27.5 is one bag, a gram more asks for the next step.
  test.each([
    [27.2, 1, 1],
    [27.5, 1, 1],
    [27.501, 1, 2],
    [27.501, 0.5, 1.5],
    [13.75, 0.5, 0.5],
    [55, 2, 2],
    [56, 2, 4],
    [0, 1, 0],
  ])('%d kg in steps of %d are %d', (kg, step, bags) => expect(bagsFor(kg, 27.5, step)).toBe(bags));

  // Three times 9.1 is 27.299999999999997 in floating point, and 27.3 / 9.1 a hair over 3.
  test('sums of fractions do not open a bag', () => expect(bagsFor(9.1 + 9.1 + 9.1, 9.1, 1)).toBe(3));
});

describe('two panels, Saturday 08:00 to 12:00', () => {
  // 08:00 set up, 08:12 set up, 08:24 mix -> 08:34 fill -> 08:41 fill -> 08:48.
  test('as early as they fit', () => {
    const state = begun();
    expect(placeBatch(state, both, false)).toBe(true);
    expect(placed(state)).toEqual({
      preps: ['08:00-08:12', '08:12-08:24'],
      fills: ['08:34-08:41', '08:41-08:48'],
      batch: '08:24-08:48',
    });
    expect([state.placed.batchBags[0], state.placed.batchKg[0], state.placed.batchFixed[0]]).toEqual([1, 27.2, NONE]);
    expect([state.demand.need[0], state.orders.unpoured[0]]).toEqual([0, 0]);
  });

  // Filled at 12:00, so mixed at 11:36; the moulds are set up just before.
  test('as late as they fit', () => {
    const state = begun();
    expect(placeBatch(state, both, true)).toBe(true);
    expect(placed(state)).toEqual({
      preps: ['11:24-11:36', '11:12-11:24'],
      fills: ['11:46-11:53', '11:53-12:00'],
      batch: '11:36-12:00',
    });
  });

  // Filled by 11:15 so that someone can stay 45 minutes; washing out may go on meanwhile.
  test('someone stays to keep it wet', () => {
    const state = begun({ mixes: mix({ attendMinutes: 45, washMinutes: 5 }) });
    expect(placeBatch(state, both, true)).toBe(true);
    expect(placed(state).batch).toBe('10:51-11:20');
  });

  test.each<[string, Partial<YardFileInput>]>([
    ['there is no time', { work: [{ ...base.work[0]!, end: '08:47' }] }],
    ['there is no mixer', { yard: { ...base.yard, mixers: 0 } }],
    ['there are too few people', { mixes: mix({ crew: 2 }) }],
    ['a bag is missing', { materials: base.materials.map((m) => ({ ...m, onHand: 0 })) }],
    ['it would stiffen', { mixes: mix({ workingMinutes: 13 }) }],
    ['it is too cold', { temperatures: [{ from: '2027-01-01', celsius: 4 }], mixes: mix({ minCelsius: 5 }) }],
    [
      'nobody would be there to strip it',
      { yard: { ...base.yard, horizonDays: 2 }, work: [{ ...base.work[0]!, end: '09:55' }] },
    ],
  ])('not when %s, and then nothing is taken', (_, changes) => {
    const state = begun(changes);
    const before = free(state);
    expect(placeBatch(state, both, false)).toBe(false);
    expect(placeBatch(state, both, true)).toBe(false);
    expect(free(state)).toEqual(before);
    expect([state.placed.pours, state.placed.batches, state.demand.need[0]]).toEqual([0, 0, 2]);
  });

  // Two fills take 14 minutes and the session ends with the second; it is stripped a week later.
  test('the very last minute will do', () => {
    const state = begun({ work: [{ ...base.work[0]!, end: '08:48' }], mixes: mix({ workingMinutes: 14 }) });
    expect(placeBatch(state, both, false)).toBe(true);
    expect(placed(state).batch).toBe('08:24-08:48');
  });

  // The bag comes a hundred minutes into the session, at 09:40.
  test('waits for what comes within the shift', () => {
    const state = begun({ materials: base.materials.map((m) => ({ ...m, onHand: 0 })) });
    state.problem.materials[0]!.arrivals.push({ at: state.timeline.from + 100, quantity: 1 });
    expect(placeBatch(state, both, false)).toBe(true);
    expect(placed(state).batch).toBe('09:40-10:04');
  });
});

describe('a mould that holds a piece', () => {
  const inMould = [{ mould: '900 no. 1', casting: 'panel-900', filledAt: '2027-04-03T11:00:00+01:00' }];
  const orders = [{ id: 'a', lines: [{ casting: 'panel-900', quantity: 2 }] }];

  // 08:00 strip -> 08:08 clean and set up -> 08:26 mix -> 08:36 fill -> 08:43.
  test('is stripped, cleaned and set up first', () => {
    const state = begun({ inMould, orders });
    expect(placeBatch(state, [filling(0)], false)).toBe(true);
    expect(clock(state.placed.firstStripStart[0])).toBe('08:00');
    expect(placed(state)).toEqual({ preps: ['08:08-08:26'], fills: ['08:36-08:43'], batch: '08:26-08:43' });
  });

  test('keeps it when the batch does not fit', () => {
    const state = begun({ inMould, orders, work: [{ ...base.work[0]!, end: '08:42' }] });
    const before = free(state);
    expect(placeBatch(state, [filling(0)], false)).toBe(false);
    expect([state.moulds.held[0], state.placed.firstStripStart[0], free(state).join()]).toEqual([
      0,
      NONE,
      before.join(),
    ]);
  });
});

describe('weather (R9)', () => {
  const steps = [
    { from: '2027-04-10', celsius: 8 },
    { from: '2027-04-12', celsius: 3 },
  ];
  const at = (more: Partial<YardFileInput['mixes'][number]>) => begun({ temperatures: steps, mixes: mix(more) });
  const start = minuteOf('2027-04-10T09:00:00+01:00');

  test.each<[Partial<YardFileInput['mixes'][number]>, boolean]>([
    [{ minCelsius: 8 }, true],
    [{ minCelsius: 8.1 }, false],
    [{ maxCelsius: 8 }, true],
    [{ maxCelsius: 7.9 }, false],
    // Filled at 09:17; protected for 38 hours it is Sunday 23:17, for 39 Monday 00:17, when it is 3 °C.
    [{ minCelsius: 5, protectHours: 38 }, true],
    [{ minCelsius: 5, protectHours: 39 }, false],
    // Only the day of the batch counts for heat.
    [{ maxCelsius: 10, protectHours: 1000 }, true],
  ])('%j on a day of 8 °C: %s', (more, allowed) => {
    expect(weatherFault(at(more).problem, 0, start, start + 17) === null).toBe(allowed);
  });

  test('where no temperature is expected every day will do', () => {
    expect(weatherFault(begun({ mixes: mix({ minCelsius: 50 }) }).problem, 0, start, start + 17)).toBeNull();
  });
});
