import type { Tx } from '../../../db/open.ts';
import { pricesOfKits } from '../../../db/stores/money-store.ts';
import { orderById, partsOfOrder, type StoredOrder } from '../../../db/stores/order-store.ts';
import { unitsOfYard } from '../../../db/stores/units-store.ts';
import type { OrderLine } from '../../../shared/order.ts';
import type { Cost } from '../../engine/cost/cost.ts';
import { CostSum } from '../../engine/cost/cost.ts';
import { priceWithMargin } from '../../engine/cost/margin.ts';
import { toMinor } from '../../engine/cost/minor-units.ts';
import { contentsOf, offersOf } from '../orders/order-contents.ts';
import type { CostGround } from './cost-ground.ts';

/** One line of an order with what the price list asks for all of it, in minor units; null where it has no price. */
interface LinePriced {
  name: string;
  quantity: number;
  unit: string;
  list: number | null;
}

/** An order with all that went out of it before. Its money is that of all of it. */
export interface WholeOrder {
  order: StoredOrder;
  parts: readonly StoredOrder[];
  lines: readonly LinePriced[];
  /** What the price list asks for all of it, in minor units; null where a line has no price. */
  list: number | null;
  cost: Cost;
}

/** Equal lines of several parts are one line. */
const joined = (lines: readonly OrderLine[]): OrderLine[] => {
  const byWhat = new Map<string, OrderLine>();
  for (const { quantity, ...what } of lines) {
    const key = JSON.stringify([what.kit, what.casting, what.material]);
    byWhat.set(key, { ...what, quantity: (byWhat.get(key)?.quantity ?? 0) + quantity });
  }
  return [...byWhat.values()];
};

const listPrice = (line: OrderLine, { estimates, money }: CostGround, typed: ReadonlyMap<string, number>) => {
  const { marginPercent } = money.costs;
  const own = line.kit === undefined ? undefined : typed.get(line.kit);
  if (own !== undefined) return toMinor(own, money.currency) * line.quantity;
  if (marginPercent === undefined) return null;
  const each = { ...line, quantity: line.material === undefined ? 1 : line.quantity };
  const price = priceWithMargin(estimates.ofLine(each).total, marginPercent / 100);
  return line.material === undefined ? price * line.quantity : price;
};

/** An order with its parts, priced by the list and with its estimate; null where there is none of that number. */
export const wholeOrder = async (tx: Tx, id: string, ground: CostGround): Promise<WholeOrder | null> => {
  const order = await orderById(tx, id);
  if (!order) return null;
  const parts = await partsOfOrder(tx, id);
  const lines = joined([...parts.flatMap((part) => part.lines), ...order.lines]);
  const typed = await pricesOfKits(tx);
  const contents = contentsOf(lines, offersOf(ground.yard, await unitsOfYard(tx)));
  const priced = contents.map(({ name, quantity, unit }, place) => ({
    ...{ name, quantity, unit, list: listPrice(lines[place]!, ground, typed) },
  }));
  const list = priced.reduce<number | null>(
    (sum, one) => (sum === null || one.list === null ? null : sum + one.list),
    0,
  );
  const cost = lines.reduce((sum, line) => sum.addCost(ground.estimates.ofLine(line)), new CostSum()).cost;
  return { order, parts, lines: priced, list, cost };
};
