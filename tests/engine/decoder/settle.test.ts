import { describe, expect, test } from 'vitest';
import type { YardFileInput } from '../../../shared/yard-file.ts';
import { compile } from '../../../src/engine/decoder/compile.ts';
import { decoderStateOf } from '../../../src/engine/decoder/decoder-state.ts';
import { dispatchOf } from '../../../src/engine/decoder/dispatch.ts';
import { NONE } from '../../../src/engine/decoder/problem.ts';
import { settle } from '../../../src/engine/decoder/settle.ts';
import { smallYard } from '../../support/small-yard.ts';

const base = smallYard();
const panels = (id: string, quantity: number) => ({ id, lines: [{ casting: 'panel-900', quantity }] });

/** Which orders get done when they are settled in the order listed, and which are left out. */
const settled = (changes: Partial<YardFileInput>) => {
  const yard = smallYard(changes);
  const dispatch = dispatchOf(Int32Array.from(yard.orders, (_, o) => o));
  const state = decoderStateOf(compile(yard), dispatch);
  const refused = settle(state, dispatch);
  const ids = (orders: number[]) => orders.map((o) => yard.orders[o]!.id);
  return {
    done: ids(yard.orders.flatMap((_, o) => (state.orders.completesAt[o] === NONE ? [] : [o]))),
    refused: ids([...refused.keys()]).sort(),
    excluded: ids(yard.orders.flatMap((_, o) => (state.orders.excluded[o] ? [o] : []))),
    pours: state.placed.pours,
  };
};

// Two Saturdays in the horizon and a mix that sets overnight: the two moulds give two panels on the 17th, and no more.
const twoInAll: Partial<YardFileInput> = {
  mixes: [{ ...base.mixes[0]!, demouldMinutes: 1000 }],
  yard: { ...base.yard, horizonDays: 10 },
};

describe('orders that do not get done', () => {
  // The large one comes first and takes all there is, so that neither gets done. By itself the small one does.
  test('are tried once more beside the rest: what a large one had taken is there for a small one', () => {
    const orders = [panels('large', 6), panels('small', 2)];
    expect(settled({ ...twoInAll, orders })).toEqual({
      ...{ done: ['small'], refused: ['large'], excluded: ['large'], pours: 2 },
    });
  });

  test('are left out where a second try leaves others undone', () => {
    const orders = [panels('large', 6), panels('first', 2), panels('second', 1)];
    expect(settled({ ...twoInAll, orders })).toEqual({
      ...{ done: ['first'], refused: ['large', 'second'], excluded: ['large', 'second'], pours: 2 },
    });
  });

  test('leave no pours behind', () => {
    expect(settled({ ...twoInAll, orders: [panels('large', 6)] })).toMatchObject({ refused: ['large'], pours: 0 });
  });

  test('none where all get done', () => {
    expect(settled({ ...twoInAll, orders: [panels('a', 1), panels('b', 1)] })).toMatchObject({ refused: [], pours: 2 });
  });
});
