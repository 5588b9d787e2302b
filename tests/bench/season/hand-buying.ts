import type { PlanFile } from '../../../shared/plan.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { daysAfter } from './clock.ts';
import type { WorkedYard } from './done-by-plan.ts';

type Delivery = YardFile['incoming'][number];

/**
 * What a maker orders by hand: in the evening of the day on which an order is taken, all that the open orders need beyond
 * what is there and on its way, and what brings each material back to what is always kept of it. In whole packs, as the
 * plan counts them, and all at once: nothing waits for the last day. Tells whether anything was ordered.
 */
export const buyByHand = (yard: WorkedYard, { buys }: Pick<PlanFile, 'buys'>, today: string): boolean => {
  for (const { id, leadDays = 0 } of yard.materials) {
    const quantity = buys.reduce((sum, buy) => (buy.material === id ? sum + buy.quantity : sum), 0);
    if (quantity > 0) yard.incoming.push({ material: id, quantity, on: daysAfter(today, leadDays) });
  }
  return buys.length > 0;
};

interface Receiving {
  yard: WorkedYard;
  toldLate: Set<Delivery>;
}

/**
 * In the morning: what was to come by today is in the stock, or its supplier says how many days later it comes, and then it
 * comes on that day. Tells whether anything is late.
 */
export const receiveByHand = (
  { yard, toldLate }: Receiving,
  today: string,
  deliveryLate: (on: string) => number,
): boolean => {
  let isLate = false;
  for (const delivery of yard.incoming.filter(({ on }) => on <= today)) {
    const late = toldLate.has(delivery) ? 0 : deliveryLate(delivery.on);
    if (late > 0) {
      delivery.on = daysAfter(delivery.on, late);
      toldLate.add(delivery);
      isLate = true;
      continue;
    }
    yard.incoming.splice(yard.incoming.indexOf(delivery), 1);
    yard.materials.find(({ id }) => id === delivery.material)!.onHand += delivery.quantity;
  }
  return isLate;
};
