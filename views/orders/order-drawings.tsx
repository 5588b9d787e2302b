import type { FC } from 'hono/jsx';
import type { DrawnKit } from '../../src/usecases/kits/draw-kits.ts';
import { KitPlan } from '../charts/kit-plan.tsx';

/** How the kits of an order stand, where their size is known: for the yard, and for the customer to build them by. */
export const OrderDrawings: FC<{ kits: readonly DrawnKit[] }> = ({ kits }) => (
  <>
    {kits.map(({ name, drawing }) => (
      <section>
        <h2>{name}</h2>
        <KitPlan drawing={drawing} />
      </section>
    ))}
  </>
);
