import { describe, expect, test } from 'vitest';
import type { YardFileInput } from '../../../shared/yard-file.ts';
import type { DecoderState } from '../../../src/engine/decoder/decoder-state.ts';
import type { Choices } from '../../../src/engine/decoder/dispatch.ts';
import {
  coatAhead,
  coatDue,
  coats,
  forgetUnneededPrep,
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

describe('minutes of setting up (R6)', () => {
  const [panel, longPanel] = [0, 1];
  test.each<[string, Partial<YardFileInput['moulds'][number]>, number, boolean, number]>([
    ['clean and set for it', {}, panel!, false, 12],
    ['dirty: cleaned as what is to be poured asks', { condition: 'dirty' }, longPanel!, false, 15 + 9 + 25],
    ['set for another', {}, longPanel!, false, 15 + 25],
    ['with a coat', coat, panel!, true, 12 + 10],
    ['dirty, changed over, coated', { condition: 'dirty', ...coat }, longPanel!, true, 15 + 9 + 25 + 10],
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

  test('with the coat that would be due a turn later', () => {
    const state = begun({ ...coat, turnsSinceOil: 3 });
    prepAhead(state);
    expect([...state.moulds.coated]).toEqual([1, 0]);
    const plain = begun({ ...coat, turnsSinceOil: 3 }, {}, { coatAhead: false });
    prepAhead(plain);
    expect([...plain.moulds.coated]).toEqual([0, 0]);
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
  // Twelve minutes and ten for the coat, as late as they fit before 12:00: dry at 13:00, after the session.
  test('is done last thing, so that it dries overnight', () => {
    const state = begun({ ...coat, turnsSinceOil: 4 });
    coatAhead(state);
    expect(preps(state)).toEqual(['11:38-12:00', 'no']);
    expect(clock(state.moulds.batchFrom[0])).toBe('13:00');
  });

  test('not to a mould whose coat is not due, nor when nothing is to be poured', () => {
    const early = begun({ ...coat, turnsSinceOil: 3 });
    coatAhead(early);
    const idle = begun({ ...coat, turnsSinceOil: 4 }, { orders: [] });
    coatAhead(idle);
    expect([preps(early), preps(idle)]).toEqual([
      ['no', 'no'],
      ['no', 'no'],
    ]);
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
