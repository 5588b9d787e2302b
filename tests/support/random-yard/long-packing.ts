import type { YardFileInput } from '../../../shared/yard-file.ts';
import type { Dice } from './dice.ts';

type Demand = Pick<YardFileInput, 'kits' | 'orders'>;

/**
 * One order takes longer to pack than most sessions last, by a kit of its own that is like another and packed with care. No other
 * order is changed by it.
 */
export const withLongPacking = <D extends Demand>(dice: Dice, demand: D): D => {
  const asking = demand.orders.filter(({ lines }) =>
    lines.some(({ kit, quantity }) => kit !== undefined && quantity > 0),
  );
  if (asking.length === 0) return demand;
  const order = dice.pick(asking);
  const line = order.lines.find(({ kit, quantity }) => kit !== undefined && quantity > 0)!;
  const kit = demand.kits.find(({ id }) => id === line.kit)!;
  const packMinutes = Math.ceil(dice.pick([170, 260, 330, 420, 700]) / line.quantity);
  const long = { ...kit, id: `kit-long-${demand.kits.length}`, name: 'With care', packMinutes };
  const lines = order.lines.map((one) => (one === line ? { ...one, kit: long.id } : one));
  return {
    ...demand,
    kits: [...demand.kits, long],
    orders: demand.orders.map((one) => (one === order ? { ...one, lines } : one)),
  };
};
