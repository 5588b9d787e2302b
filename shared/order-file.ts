import { type Fault, pathText } from './fault.ts';
import { type Order, order } from './order.ts';
import { readYardFile, type YardFile } from './yard-file.ts';

/** The orders that have the id an order asks for. */
const ofSameId = ({ orders }: YardFile, input: unknown): Order[] => {
  const id = typeof input === 'object' && input !== null && 'id' in input ? input.id : undefined;
  return orders.filter((one) => one.id === id);
};

/** What of a yard an order refers to. The rest was read with the yard, and a large one takes time to read. */
const offering = ({ keep: _keep, begun: _begun, ...yard }: YardFile) => ({
  ...yard,
  ...{ work: [], closed: [], extra: [], temperatures: [], incoming: [], moulds: [], finished: [], inMould: [] },
});

/**
 * Reads one order that is asked about but not taken yet (ORDER.json of `rota quote`): it has to fit the yard and its
 * id must not be taken. Its `due` is ignored, so it is left out. Faults have paths within the order.
 *
 * Example: `readOrderFor(yard, { id: '27-999', lines: [{ kit: 'none', quantity: 1 }] }).faults` is `[{ path:
 * 'lines[0].kit', message: 'no kit named "none"' }]`.
 */
export const readOrderFor = (
  yard: YardFile,
  input: unknown,
): { ok: true; order: Order } | { ok: false; faults: Fault[] } => {
  const others = ofSameId(yard, input);
  const withIt = readYardFile({ ...offering(yard), orders: [...others, input] });
  const own = `orders[${others.length}]`;
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
