import { expect, test } from 'vitest';
import { setMaterialBuying } from '../../../db/stores/supplier-store.ts';
import { tripsAhead } from '../../../src/usecases/buying/trips-ahead.ts';
import { type ComputationKind, computeHere } from '../../../src/usecases/core/computations.ts';
import type { Background } from '../../../src/usecases/core/context.ts';
import { showSessionCosts } from '../../../src/usecases/money/show-session-costs.ts';
import { currentPlan } from '../../../src/usecases/plan/make-plan.ts';
import { smallYard } from '../../support/small-yard.ts';
import { yardContext } from '../../support/yard-context.ts';

test('trips and what sessions cost are worked out in a thread, once for all who ask, until something is stored', async () => {
  const yard = smallYard();
  const materials = yard.materials.map((one) => (one.id === 'mortar' ? { ...one, onHand: 0, leadDays: 1 } : one));
  const plain = await yardContext({ ...yard, materials });
  const asked: ComputationKind[] = [];
  const background = {
    planMade: () => {},
    improving: () => false,
    computeForRequest: async (kind, question) => {
      asked.push(kind);
      // As it goes to a thread and back.
      return structuredClone(computeHere(kind, structuredClone(question)));
    },
  } as Partial<Background> as Background;
  const context = { ...plain, background };
  const current = await currentPlan(context);
  asked.length = 0;
  const [one, other] = await Promise.all([tripsAhead(context, current), tripsAhead(context, current)]);
  expect(one.trips.flatMap(({ lines }) => lines)).toMatchObject([{ material: 'mortar', quantity: 1, price: null }]);
  expect(other).toBe(one);
  const first = await showSessionCosts(context);
  expect(await showSessionCosts({ ...context, now: '2027-04-08T09:30:00+01:00' })).toEqual(first);
  expect(first.sessions).toHaveLength(1);
  expect(asked).toEqual(['trips', 'session costs']);
  const buying = { kgPerUnit: 25, breaks: [] };
  await context.database.write((tx) => setMaterialBuying(tx, 'mortar', buying));
  const after = await tripsAhead(context, await currentPlan(context));
  expect(after.trips.map(({ kg }) => kg)).toEqual([25]);
});
