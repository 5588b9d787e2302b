import { describe, expect, test } from 'vitest';
import type { YardFileInput } from '../../../shared/yard-file.ts';
import { composeBatch, fullestKg, leadCasting, scarcity } from '../../../src/engine/decoder/compose.ts';
import type { DecoderState } from '../../../src/engine/decoder/decoder-state.ts';
import type { Choices } from '../../../src/engine/decoder/dispatch.ts';
import { listOpenings } from '../../../src/engine/decoder/openings.ts';
import { NONE } from '../../../src/engine/decoder/problem.ts';
import { begunDecoder } from '../../support/begun-decoder.ts';
import { smallYard } from '../../support/small-yard.ts';

const base = smallYard();
const begun = (changes: Partial<YardFileInput>, choices: Partial<Choices> = {}): DecoderState => {
  const state = begunDecoder(smallYard(changes), choices);
  listOpenings(state, state.openings);
  return state;
};
const mouldsOf = (state: DecoderState, waitMinutes: number, lead = 0) =>
  composeBatch(state, lead, state.openings, waitMinutes).map((x) => state.problem.yard.moulds[x.mould]!.id);
const moulds = (first: Partial<YardFileInput['moulds'][number]>) => [{ ...base.moulds[0]!, ...first }, base.moulds[1]!];

describe('two panels of 13.6 kg for a bag that places 27.5 kg', () => {
  test('go into one batch', () => {
    const state = begun({});
    expect(mouldsOf(state, 0)).toEqual(['900 no. 1', '900 no. 2']);
    expect(fullestKg(state, 0)).toBeCloseTo(27.2);
  });

  // The first mould has to be cleaned: 08:18 against 08:12.
  test('the second joins when its mould is ready within the wait', () => {
    const state = begun({ moulds: moulds({ condition: 'dirty' }) });
    expect(mouldsOf(state, 5)).toEqual(['900 no. 2']);
    expect(mouldsOf(state, 6)).toEqual(['900 no. 2', '900 no. 1']);
  });

  test('not when the order asks for one', () => {
    const state = begun({ orders: [{ id: 'a', lines: [{ casting: 'panel-900', quantity: 1 }] }] });
    expect(mouldsOf(state, 60)).toHaveLength(1);
    expect(fullestKg(state, 0)).toBeCloseTo(13.6);
  });

  test('not when batches are kept small', () => {
    expect(mouldsOf(begun({}, { mostPieces: 1 }), 60)).toHaveLength(1);
  });

  // Two fills are 14 minutes; at 30 °C the 20 minutes of working time are over after 20 / 1.755 = 11.4.
  test('not in the heat', () => {
    const state = begun({ temperatures: [{ from: '2027-01-01', celsius: 30 }] });
    expect(mouldsOf(state, 60)).toHaveLength(1);
  });

  // At 60 °C age is gained exp(5000 (1/293.15 - 1/333.15)) = 7.75 times as fast: 2.6 minutes, less than one fill.
  test('none at all where even one would stiffen', () => {
    expect(mouldsOf(begun({ temperatures: [{ from: '2027-01-01', celsius: 60 }] }), 60)).toEqual([]);
  });
});

describe('three lengths in one mix', () => {
  const panel = (id: string, kg: number) => ({ ...base.castings[0]!, id, kg });
  const castings = [panel('short', 9), panel('middle', 13), panel('long', 18)];
  const mould = (casting: string, no: number) => ({
    ...base.moulds[0]!,
    id: `${casting} ${no}`,
    makes: [{ casting }],
    setFor: casting,
  });
  const order = (id: string, casting: string, quantity = 1) => ({ id, lines: [{ casting, quantity }] });
  const common = { castings, kits: [], moulds: ['short', 'middle', 'long'].map((x) => mould(x, 1)) };

  test('the first order of the sequence leads', () => {
    const state = begun({ ...common, orders: [order('a', 'long'), order('b', 'short')] });
    expect(leadCasting(state, state.openings)).toBe(2);
  });

  // 18 + 9 = 27 fits the 27.5 kg, 18 + 13 = 31 does not.
  test('what fits beside the lead fills the batch up', () => {
    const state = begun({ ...common, orders: [order('a', 'long'), order('b', 'middle'), order('c', 'short')] });
    expect(mouldsOf(state, 60, 2)).toEqual(['long 1', 'short 1']);
  });

  // Four short pieces of one mould are scarcer than one long piece of one mould.
  test('within one order the piece with the scarcest moulds leads', () => {
    const lines = [
      { casting: 'long', quantity: 1 },
      { casting: 'short', quantity: 4 },
    ];
    const state = begun({ ...common, orders: [{ id: 'a', lines }] });
    expect([scarcity(state, 0), scarcity(state, 2)]).toEqual([4, 1]);
    expect(leadCasting(state, state.openings)).toBe(0);
    const listed = begun(
      { ...common, castings: [...castings].reverse(), orders: [{ id: 'a', lines }] },
      { scarceFirst: false },
    );
    expect(leadCasting(listed, listed.openings)).toBe(0);
    expect(listed.problem.yard.castings[0]!.id).toBe('long');
  });

  test('a mould that makes two lengths is taken once', () => {
    const both = { ...mould('short', 1), id: 'both', makes: [{ casting: 'short' }, { casting: 'middle' }] };
    const state = begun({ ...common, moulds: [both], orders: [order('a', 'short'), order('b', 'middle')] });
    expect(state.openings.count).toBe(2);
    expect(mouldsOf(state, 60)).toEqual(['both']);
  });

  // "both" is ready at 08:12, the mould that makes nothing but short ones has to be cleaned first and is ready at 08:18. Two
  // middle pieces wait for one mould, one short piece for two: the short one leaves "both" to them.
  test('a mould that is wanted more for another length is spared for it', () => {
    const both = { ...mould('short', 0), id: 'both', makes: [{ casting: 'short' }, { casting: 'middle' }] };
    const dirty = { ...mould('short', 1), condition: 'dirty' as const };
    const asked = (short: number, middle: number) => {
      const orders = [order('a', 'short', short), order('b', 'middle', middle)];
      return mouldsOf(begun({ ...common, moulds: [both, dirty], orders }), 60)[0];
    };
    expect(asked(1, 2)).toBe('short 1');
    // Wanted as much for either it is taken for the one that leads.
    expect(asked(2, 1)).toBe('both');
  });

  test('none leads where no mould is open', () => {
    const state = begun({ ...common, orders: [] });
    expect(leadCasting(state, state.openings)).toBe(NONE);
  });
});
