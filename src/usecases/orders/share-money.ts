import type { Tx } from '../../../db/open.ts';
import { habitsOfYard } from '../../../db/stores/habits-store.ts';
import { addPayment, moneyOfOrder, removePayment, setMoneyOfOrder } from '../../../db/stores/money-store.ts';
import type { KeptEstimate } from '../../../shared/money.ts';
import { fromMinor, toMinor } from '../../engine/cost/minor-units.ts';
import { shareOut } from '../../engine/cost/share-out.ts';

/**
 * Shares what is asked for an order, what of it beforehand, what it was estimated at and each payment by weights among itself, the first
 * of them, and orders split off it: all of them together come to just what it was, to the cent. What was sent stays with the first.
 */
export const shareMoney = async (tx: Tx, ids: readonly string[], weights: readonly number[]): Promise<void> => {
  const { price, deposit, estimate, payments } = await moneyOfOrder(tx, ids[0]!);
  if (price === null && deposit === null && payments.length === 0) return;
  const { currency } = await habitsOfYard(tx);
  const shared = (amount: number): number[] =>
    shareOut(toMinor(amount, currency), weights).map((minor) => fromMinor(minor, currency));
  const [prices, deposits] = [price, deposit].map((amount) => (amount === null ? null : shared(amount)));
  const parts = Object.entries(estimate?.parts ?? {}).map(([kind, amount]) => ({ kind, shares: shared(amount) }));
  const estimateOf = (place: number): KeptEstimate | null =>
    estimate && { at: estimate.at, parts: Object.fromEntries(parts.map(({ kind, shares }) => [kind, shares[place]!])) };
  for (const [place, id] of ids.entries())
    await setMoneyOfOrder(tx, id, {
      ...{ price: prices?.[place] ?? null, deposit: deposits?.[place] ?? null, estimate: estimateOf(place) },
    });
  for (const { id: payment, amount, ...how } of payments) {
    await removePayment(tx, payment);
    for (const [place, share] of shared(amount).entries())
      if (share > 0) await addPayment(tx, ids[place]!, { ...how, amount: share });
  }
};
