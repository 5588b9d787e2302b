import { expect, test } from 'vitest';
import { stockToTake } from '../../../src/usecases/today/stock-to-take.ts';
import { handPlan, plannedYard } from '../../support/planned-yard.ts';

const [batch] = handPlan().batches;
const { pours } = handPlan();

/* By hand: a batch takes 1 bag and twice 0.16 of mesh, the order two lengths of rod. */
test('what is taken adds up, and the first material there is too little of is named', () => {
  const { materials } = plannedYard();
  const withMesh = (onHand: number) =>
    plannedYard({ materials: materials.map((one) => (one.id === 'mesh' ? { ...one, onHand } : one)) });
  const enough = stockToTake(withMesh(0.64));
  expect([enough.forBatch(batch!, pours), enough.forBatch(batch!, pours)]).toEqual([null, null]);
  expect(enough.forBatch(batch!, pours)).toBe('Mesh');
  expect(stockToTake(withMesh(0.31)).forBatch(batch!, pours)).toBe('Mesh');
  expect(stockToTake(withMesh(0)).forOrder('27-001')).toBeNull();
});

test('an order takes its lengths', () => {
  const { materials } = plannedYard();
  const yard = plannedYard({ materials: materials.map((one) => (one.id === 'rod' ? { ...one, onHand: 0.1 } : one)) });
  expect(stockToTake(yard).forOrder('27-001')).toBe('Rod 12 mm');
});
