import { describe, expect, test } from 'vitest';
import type { YardFileInput } from '../../../shared/yard-file.ts';
import type { DecoderState } from '../../../src/engine/decoder/decoder-state.ts';
import type { Choices } from '../../../src/engine/decoder/dispatch.ts';
import {
  coatAhead,
  coatDue,
  coats,
  forgetUnneededPrep,
  minutesToCoat,
  prepAhead,
  prepMinutes,
} from '../../../src/engine/decoder/prep.ts';
import { NONE } from '../../../src/engine/decoder/problem.ts';
import { begunDecoder } from '../../support/begun-decoder.ts';
import { smallYard } from '../../support/small-yard.ts';

const base = smallYard();
const clock = (minute: number | undefined) => new Date((minute! + 60) * 60_000).toISOString().slice(11, 16);
const long = { ...base.castings[0]!, id: 'long', prepMinutes: 15, cleanMinutes: 9 };
const coat = { oilEveryTurns: 4, oilMinutes: 10, oilDryMinutes: 60 };

const begun = (
  first: Partial<YardFileInput['moulds'][number]> = {},
  more: Partial<YardFileInput> = {},
  choices: Partial<Choices> = {},
): DecoderState =>
  begunDecoder(
    smallYard({
      castings: [...base.castings, long],
      moulds: [
        { ...base.moulds[0]!, makes: [{ casting: 'panel-900' }, { casting: 'long', changeMinutes: 25 }], ...first },
        base.moulds[1]!,
      ],
      ...more,
    }),
    choices,
  );
const preps = ({ moulds }: DecoderState) =>
  [0, 1].map((k) =>
    moulds.preppedFor[k] === NONE ? 'no' : `${clock(moulds.prepStart[k])}-${clock(moulds.prepEnd[k])}`,
  );

const coatOf = ({ moulds }: DecoderState) =>
  moulds.coatStart[0] === NONE ? null : [clock(moulds.coatStart[0]), clock(moulds.coatEnd[0])];

describe('minutes of setting up (R6)', () => {
  const [panel, longPanel] = [0, 1];
  test.each<[string, Partial<YardFileInput['moulds'][number]>, number, boolean, number]>([
    ['clean and set for it', {}, panel!, false, 12],
    ['dirty: cleaned as what is to be poured asks', { condition: 'dirty' }, longPanel!, false, 15 + 9 + 25],
    ['set for another', {}, longPanel!, false, 15 + 25],
    ['after a coat', { condition: 'dirty', ...coat }, panel!, true, 12],
    ['after a coat, changed over', { condition: 'dirty', ...coat }, longPanel!, true, 15 + 25],
  ])('%s', (_, mould, casting, coated, minutes) => {
    expect(prepMinutes(begun(mould), 0, casting, coated, false)).toBe(minutes);
  });

  // It holds a long panel: after the strip it is dirty and set for that.
  test('after a strip', () => {
    const state = begun(
      {},
      { inMould: [{ mould: '900 no. 1', casting: 'long', filledAt: '2027-04-03T11:00:00+01:00' }] },
    );
    expect(prepMinutes(state, 0, longPanel!, false, true)).toBe(15 + 9);
    expect(prepMinutes(state, 0, panel!, false, true)).toBe(12 + 6);
  });
});

describe('minutes of a coat (R6)', () => {
  test.each<[string, Partial<YardFileInput['moulds'][number]>, number]>([
    ['of a clean mould', coat, 10],
    ['of a dirty one: cleaned as what it is set for asks', { ...coat, condition: 'dirty', setFor: 'long' }, 10 + 9],
  ])('%s', (_, mould, minutes) => {
    expect(minutesToCoat(begun(mould), 0, false)).toBe(minutes);
  });

  test('after a strip', () => {
    const inMould = [{ mould: '900 no. 1', casting: 'long', filledAt: '2027-04-03T11:00:00+01:00' }];
    expect(minutesToCoat(begun(coat, { inMould }), 0, true)).toBe(10 + 9);
  });
});

describe('a sealing coat every four turns', () => {
  test.each([
    [3, false],
    [4, true],
    [5, true],
  ])('after %d turns it is due: %s', (turnsSinceOil, due) => {
    const state = begun({ ...coat, turnsSinceOil });
    expect([coatDue(state, 0), coats(state, 0)]).toEqual([due, due]);
  });

  test('may be given early where that is chosen, never twice running and never to a mould that takes none', () => {
    expect(coats(begun({ ...coat, turnsSinceOil: 1 }, {}, { coatEarly: true }), 0)).toBe(true);
    expect(coats(begun({ ...coat, turnsSinceOil: 0 }, {}, { coatEarly: true }), 0)).toBe(false);
    expect(coats(begun({ turnsSinceOil: 9 }, {}, { coatEarly: true }), 0)).toBe(false);
  });
});

describe('setting up for the next session', () => {
  test('as many moulds as pieces are needed, from the first free minute on', () => {
    const state = begun();
    prepAhead(state);
    expect(preps(state)).toEqual(['08:12-08:24', '08:00-08:12']);
    expect(state.demand.prepped[0]).toBe(2);
  });

  test('the mould that makes nothing else first', () => {
    const state = begun({}, { orders: [{ id: 'a', lines: [{ casting: 'panel-900', quantity: 1 }] }] });
    prepAhead(state);
    expect(preps(state)).toEqual(['no', '08:00-08:12']);
  });

  // Coated 08:00 to 08:10; meanwhile the other is set up; dry at 09:10.
  test('with the coat that would be due a turn later, before it', () => {
    const state = begun({ ...coat, turnsSinceOil: 3 });
    prepAhead(state);
    expect(coatOf(state)).toEqual(['08:00', '08:10']);
    expect(preps(state)).toEqual(['09:10-09:22', '08:10-08:22']);
    const plain = begun({ ...coat, turnsSinceOil: 3 }, {}, { coatAhead: false });
    prepAhead(plain);
    expect(coatOf(plain)).toBeNull();
  });

  // Until 11:50 there is something to do; the coat dries past the end of the session.
  test('with the coat alone where it dries past the session', () => {
    const state = begun({ ...coat, turnsSinceOil: 4 });
    state.timeline.take(state.timeline.from, state.timeline.to - state.timeline.from - 10, 1);
    prepAhead(state);
    expect([coatOf(state), preps(state)]).toEqual([
      ['11:50', '12:00'],
      ['no', 'no'],
    ]);
    expect([state.moulds.turnsSinceOil[0], state.moulds.dirty[0], clock(state.moulds.freeAt[0])]).toEqual([
      0,
      0,
      '13:00',
    ]);
  });

  test('never what is due and has no time left for its coat', () => {
    const state = begun({ ...coat, oilMinutes: 20, turnsSinceOil: 4 }, {}, { restMould: 1 });
    state.timeline.take(state.timeline.from, state.timeline.to - state.timeline.from - 15, 1);
    prepAhead(state);
    expect([coatOf(state), preps(state)]).toEqual([null, ['no', 'no']]);
  });

  test('not what rests, waits for a fixed pour or has no time left', () => {
    const state = begun({}, {}, { restMould: 0 });
    state.moulds.reserved[1] = 1;
    prepAhead(state);
    expect(preps(state)).toEqual(['no', 'no']);
    const full = begun();
    full.timeline.take(full.timeline.from, full.timeline.to - full.timeline.from - 11, 1);
    prepAhead(full);
    expect(preps(full)).toEqual(['no', 'no']);
  });
});

describe('coating ahead', () => {
  // Ten minutes for the coat, as late as they fit before 12:00: dry at 13:00, after the session.
  test('is done last thing, so that it dries overnight', () => {
    const state = begun({ ...coat, turnsSinceOil: 4 });
    coatAhead(state);
    expect([coatOf(state), preps(state)]).toEqual([
      ['11:50', '12:00'],
      ['no', 'no'],
    ]);
    expect(clock(state.moulds.freeAt[0])).toBe('13:00');
  });

  test('not to a mould whose coat is not due, nor when nothing is to be poured', () => {
    const early = begun({ ...coat, turnsSinceOil: 3 });
    coatAhead(early);
    const idle = begun({ ...coat, turnsSinceOil: 4 }, { orders: [] });
    coatAhead(idle);
    expect([coatOf(early), coatOf(idle)]).toEqual([null, null]);
  });
});

test('a mould set up for what nobody needs counts as not set up', () => {
  const state = begun({ prepped: true });
  forgetUnneededPrep(state, 0);
  expect([state.moulds.preppedFor[0], state.demand.prepped[0]]).toEqual([0, 1]);
  // Held back, an order asks for nothing yet, and needs its pieces later all the same.
  state.demand.need[0] = 0;
  forgetUnneededPrep(state, 0);
  expect([state.moulds.preppedFor[0], state.demand.prepped[0]]).toEqual([0, 1]);
  state.demand.head[0] = state.demand.end[0]!;
  forgetUnneededPrep(state, 0);
  expect([state.moulds.preppedFor[0], state.demand.prepped[0]]).toEqual([NONE, 0]);
});
