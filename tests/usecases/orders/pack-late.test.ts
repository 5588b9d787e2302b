import { expect, test } from 'vitest';
import { packOrder } from '../../../src/usecases/orders/pack-order.ts';
import { showOrder } from '../../../src/usecases/orders/show-order.ts';
import { currentPlan } from '../../../src/usecases/plan/make-plan.ts';
import { doneOf } from '../../support/outcomes.ts';
import { plannedYard } from '../../support/planned-yard.ts';
import { yardContext } from '../../support/yard-context.ts';

/** Promised for Saturday 10 April, and packed at an instant. */
const packedAt = async (now: string, promised: { due?: string; wanted?: string } = { due: '2027-04-10' }) => {
  const { database } = await yardContext(
    plannedYard({
      finished: [{ casting: 'panel-900', count: 3 }],
      orders: [{ id: '27-001', customer: 'School garden', ...promised, lines: [{ kit: 'pair', quantity: 1 }] }],
    }),
  );
  const at = (instant: string) => ({ database, now: instant });
  await currentPlan(at('2027-04-10T08:00:00+01:00'));
  const packed = doneOf(await packOrder(at(now), '27-001', { evenShort: false }));
  return { packed, order: (await showOrder(at(now), '27-001'))!.order };
};

/* The plan took it as packed on its day, so that nothing moved when it was said two days later, and nobody was told. */
test('what is packed after the date given says so', async () => {
  const { packed, order } = await packedAt('2027-04-12T09:40:00+01:00');
  expect(packed.words).toBe('Packed for School garden, 2 days after the date given');
  expect(order).toMatchObject({ packedOn: '2027-04-12', inYard: true });
});

test.each([
  ['on its day', '2027-04-10T11:00:00+01:00', { due: '2027-04-10' }],
  ['without a date', '2027-04-12T09:40:00+01:00', {}],
])('what is packed %s says nothing of it', async (_how, now, promised) => {
  const { packed, order } = await packedAt(now, promised);
  expect(packed.words).toBe('Packed for School garden');
  expect(order.packedOn).toBe(now.slice(0, 10));
});

test('a date that was only asked for is called so', async () => {
  const { packed } = await packedAt('2027-04-11T09:40:00+01:00', { wanted: '2027-04-10' });
  expect(packed.words).toBe('Packed for School garden, 1 day after the date wanted');
});
