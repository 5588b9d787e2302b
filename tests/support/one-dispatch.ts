import { asInFile, canonicalYard } from '../../src/engine/canonical-yard.ts';
import { compile } from '../../src/engine/decoder/compile.ts';
import { decoderStateOf } from '../../src/engine/decoder/decoder-state.ts';
import { dispatchOf } from '../../src/engine/decoder/dispatch.ts';
import { settle } from '../../src/engine/decoder/settle.ts';
import { writePlan } from '../../src/engine/decoder/write-plan.ts';
import { memoryOf } from '../../src/engine/search/memory.ts';
import { startSequences } from '../../src/engine/search/quick.ts';
import type { Computations } from '../../src/usecases/core/computations.ts';

/**
 * A plan of the first dispatch that comes to mind, without any search: of a thousand orders in a second, and as long as any other.
 * For what is about pages and not about plans.
 */
export const planOfOneDispatch = ({
  yard,
}: Computations['quick plan']['question']): Computations['quick plan']['answer'] => {
  const canonical = canonicalYard(yard);
  const problem = compile(canonical.yard);
  const dispatch = dispatchOf(startSequences(problem)[0]!);
  const state = decoderStateOf(problem, dispatch);
  const refused = settle(state, dispatch);
  const written = writePlan(
    state,
    [...refused].map(([order, why]) => ({ order: problem.yard.orders[order]!.id, ...why })),
  );
  if (!('plan' in written)) throw new Error('its sticks are not enough');
  return { plan: asInFile(written.plan, yard, canonical.lots), memory: memoryOf(problem, dispatch) };
};
