import { describe, expect, test } from 'vitest';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFileInput } from '../../../shared/yard-file.ts';
import type { DecoderState } from '../../../src/engine/decoder/decoder-state.ts';
import type { Choices } from '../../../src/engine/decoder/dispatch.ts';
import { latestStart, listOpenings } from '../../../src/engine/decoder/openings.ts';
import { NEVER } from '../../../src/engine/decoder/problem.ts';
import { begunDecoder } from '../../support/begun-decoder.ts';
import { smallYard } from '../../support/small-yard.ts';

const base = smallYard();
const clock = (minute: number) => new Date((minute + 60) * 60_000).toISOString().slice(11, 16);
const saturday = (time: string) => minuteOf(`2027-04-10T${time}:00+01:00`);
const listed = (state: DecoderState) => {
  const { openings } = state;
  listOpenings(state, openings);
  return Array.from({ length: openings.count }, (_, i) => ({
    mould: openings.mould[i],
    readyAt: clock(openings.readyAt[i]!),
    work: openings.work[i],
  }));
};
const yardWith = (first: Partial<YardFileInput['moulds'][number]>, more: Partial<YardFileInput> = {}) =>
  smallYard({ moulds: [{ ...base.moulds[0]!, ...first }, base.moulds[1]!], ...more });
const begun = (first: Partial<YardFileInput['moulds'][number]>, choices: Partial<Choices> = {}) =>
  begunDecoder(yardWith(first), choices);

describe('a mould could take a pour on Saturday from 08:00', () => {
  const other = { mould: 1, readyAt: '08:12', work: 12 };

  test('once it is set up, twelve minutes', () => {
    expect(listed(begun({}))).toEqual([{ mould: 0, readyAt: '08:12', work: 12 }, other]);
  });

  test('six minutes later when it has to be cleaned first', () => {
    expect(listed(begun({ condition: 'dirty' }))).toEqual([{ mould: 0, readyAt: '08:18', work: 18 }, other]);
  });

  test('at once when it is set up already', () => {
    expect(listed(begun({ prepped: true }))).toEqual([{ mould: 0, readyAt: '08:00', work: 0 }, other]);
  });

  // 12 + 10 minutes of work and an hour to dry: 09:22.
  test('when its coat is dry', () => {
    const coat = { oilEveryTurns: 4, turnsSinceOil: 4, oilMinutes: 10, oilDryMinutes: 60 };
    expect(listed(begun(coat))).toEqual([{ mould: 0, readyAt: '09:22', work: 22 }, other]);
  });

  // Filled at 07:30 that day, hard 75 minutes later at 08:45; strip 8, clean 6, set up 12: 09:11.
  test('after what it holds is out', () => {
    const inMould = [{ mould: '900 no. 1', casting: 'panel-900', filledAt: '2027-04-10T07:30:00+01:00' }];
    const yard = { ...base.yard, now: '2027-04-10T07:31:00+01:00' };
    const orders = [{ id: 'a', lines: [{ casting: 'panel-900', quantity: 3 }] }];
    const state = begunDecoder(yardWith({}, { inMould, yard, orders }));
    expect(listed(state)).toEqual([{ mould: 0, readyAt: '09:11', work: 26 }, other]);
    expect(clock(state.openings.soonest[0]!)).toBe('08:12');
  });

  test.each<[string, (state: DecoderState) => void]>([
    ['is out of use', (state) => state.moulds.freeAt.fill(NEVER, 0, 1)],
    ['waits for a fixed pour', (state) => state.moulds.reserved.fill(1, 0, 1)],
    ['is to rest', (state) => Object.assign(state, { choices: { ...state.choices, restMould: 0 } })],
    ['is free too late', (state) => state.moulds.freeAt.fill(saturday('11:44'), 0, 1)],
  ])('not when it %s', (_, change) => {
    const state = begun({});
    change(state);
    expect(listed(state)).toEqual([other]);
  });

  test.each<[string, (state: DecoderState) => void]>([
    ['is not to be tried again', (state) => state.blocked.fill(1)],
    ['nobody needs', (state) => state.demand.need.fill(0)],
  ])('not for a casting that %s', (_, change) => {
    const state = begun({});
    change(state);
    expect(listed(state)).toEqual([]);
    expect(state.openings.soonest[0]).toBe(NEVER);
  });
});

describe('the latest start of a batch', () => {
  const latest = (mix: Partial<YardFileInput['mixes'][number]>, yard: Partial<YardFileInput['yard']> = {}) =>
    clock(
      latestStart(
        begunDecoder(smallYard({ mixes: [{ ...base.mixes[0]!, ...mix }], yard: { ...base.yard, ...yard } })),
        0,
      ),
    );

  // Mix 10 and fill 7 by 12:00.
  test('is when it is filled at the end of the session', () => expect(latest({})).toBe('11:43'));
  test('leaves time to wash out', () => expect(latest({ washMinutes: 5 })).toBe('11:38'));
  test('leaves time to keep it wet', () => expect(latest({ attendMinutes: 60 })).toBe('10:43'));
  // Washed out by 11:50, and someone is there until 12:00.
  test('the yard is cleared up meanwhile', () =>
    expect(latest({ washMinutes: 5, attendMinutes: 12 }, { clearUpMinutes: 10 })).toBe('11:28'));
});
