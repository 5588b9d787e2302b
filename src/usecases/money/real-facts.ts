import type { Tx } from '../../../db/open.ts';
import { stockTakenFor } from '../../../db/stores/stock-lines.ts';
import { workRecords } from '../../../db/stores/work-record-store.ts';
import { isBatch } from '../../../shared/batch-record.ts';
import type { KeptEstimate } from '../../../shared/money.ts';
import { markKey } from '../../../shared/piece-mark.ts';
import type { WorkRecord } from '../../../shared/work-record.ts';
import { bookedGoods } from '../../engine/cost/booked-goods.ts';
import { CostSum } from '../../engine/cost/cost.ts';
import { toMinor } from '../../engine/cost/minor-units.ts';
import type { PricedDelivery } from '../../engine/cost/priced-lots.ts';
import { type RealCost, realCost } from '../../engine/cost/real-cost.ts';
import { sessionShare } from '../../engine/cost/session-share.ts';
import { today } from '../core/context.ts';
import { type CostFacts, costFacts } from './cost-facts.ts';
import type { CostGround } from './cost-ground.ts';
import type { WholeOrder } from './order-lines.ts';

/** What an order was estimated at and what it really cost, beside each other, in the yard's money. */
export interface RealFacts extends Omit<RealCost, 'cost'> {
  estimated: CostFacts;
  /** When that was estimated; null: by the figures as they are now. */
  estimatedOn: string | null;
  real: CostFacts;
  isMore: boolean;
}

const deliveriesOf = ({ money: { bought, currency } }: CostGround): ReadonlyMap<string, PricedDelivery[]> => {
  const byMaterial = new Map<string, PricedDelivery[]>();
  for (const { material, quantity, arrivedOn, price, useBy } of bought) {
    if (arrivedOn === null) continue;
    const own = byMaterial.get(material) ?? [];
    own.push({ quantity, on: arrivedOn, price: price === null ? null : toMinor(price, currency), useBy });
    byMaterial.set(material, own);
  }
  return byMaterial;
};

const keptFacts = ({ parts }: KeptEstimate, currency: string): CostFacts => {
  const sum = new CostSum();
  for (const [kind, amount] of Object.entries(parts)) sum.add(kind as keyof typeof parts, toMinor(amount, currency));
  return costFacts(sum.cost, currency);
};

/** What is still to be packed is not spent yet. */
const isAllPacked = ({ order }: WholeOrder): boolean => order.status === 'handed over' || order.packedAt !== null;

/** Whose lines of the stock book count: those of the orders, and of batches that any of their pieces may be of. */
const worksOf = (records: readonly WorkRecord[], all: readonly { id: string }[]) => {
  const orders = all.map(({ id }) => id);
  const isOurs = (id: string | undefined) => id !== undefined && orders.includes(id);
  const packed = new Set(
    records.flatMap((one) => (one.kind === 'packed' && isOurs(one.order) ? one.pieces.map(markKey) : [])),
  );
  const batches = records.filter(
    (one) => isBatch(one) && one.pours.some((pour) => isOurs(pour.order) || packed.has(markKey(pour))),
  );
  return { orders, batches: batches.map(({ at }) => at) };
};

/** What an order really cost, once all of it is packed; null before, and where nothing of it is on record. */
export const realFacts = async (
  tx: Tx,
  whole: WholeOrder,
  estimate: KeptEstimate | null,
  ground: CostGround,
): Promise<RealFacts | null> => {
  if (!isAllPacked(whole)) return null;
  const { yard, figures, estimates, money } = ground;
  const { timeZone } = yard.yard;
  const { order, parts } = whole;
  const all = [...parts, order];
  const records = await workRecords(tx);
  const real = realCost(new Map(all.map(({ id, lines }) => [id, lines])), {
    ...{ yard, figures, estimates, records, deliveries: deliveriesOf(ground) },
    booked: bookedGoods(await stockTakenFor(tx, worksOf(records, all)), yard.materials),
    perMinute: sessionShare(yard, figures),
    dateOf: (instant) => today(timeZone, instant),
  });
  if (!real || real.onRecord === 0) return null;
  const { cost, ...rest } = real;
  return {
    ...rest,
    estimated: estimate ? keptFacts(estimate, money.currency) : costFacts(whole.cost, money.currency),
    estimatedOn: estimate && today(timeZone, estimate.at),
    real: costFacts(cost, money.currency),
    isMore: cost.missing.length > 0,
  };
};
