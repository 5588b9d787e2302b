import { type Fault, pathText } from './fault.ts';
import { type Order, order } from './order.ts';
import { readYardFile, type YardFile } from './yard-file.ts';

/**
 * Reads one order that is asked about but not taken yet (ORDER.json of `rota quote`): it has to fit the yard and its id
 * must not be taken. Its `due` is ignored, so it is left out.
 */
export const readOrderFor = (
  yard: YardFile,
  input: unknown,
): { ok: true; order: Order } | { ok: false; faults: Fault[] } => {
  const withIt = readYardFile({ ...yard, orders: [...yard.orders, input] });
  const own = `orders[${yard.orders.length}]`;
  if (!withIt.ok) {
    const faults = withIt.faults.map((f) => ({
      ...f,
      path: f.path.replace(own, '').replace(/^\./, '') || pathText([]),
    }));
    return { ok: false, faults };
  }
  const { due: _ignored, ...rest } = order.parse(input);
  return { ok: true, order: rest };
};
