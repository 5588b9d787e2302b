import { expect, test } from 'vitest';
import { compile } from '../../../src/engine/decoder/compile.ts';
import { decoderStateOf } from '../../../src/engine/decoder/decoder-state.ts';
import { dispatchOf } from '../../../src/engine/decoder/dispatch.ts';
import { leftOutLast } from '../../../src/engine/search/left-out.ts';
import { randomYard } from '../../support/random-yard.ts';

test('orders left out come last, the others stay in order', () => {
  const problem = compile(randomYard(0, 'tight-rack'));
  const state = decoderStateOf(problem, dispatchOf(new Int32Array(0)));
  state.orders.excluded[1] = 1;
  const sequence = Int32Array.from(problem.orders, (_, o) => o);
  const [first, ...rest] = sequence;
  expect([...leftOutLast(state.orders.excluded, dispatchOf(sequence)).sequence]).toEqual([first, ...rest.slice(1), 1]);
});
