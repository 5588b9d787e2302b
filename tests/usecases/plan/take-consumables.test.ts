import { expect, test } from 'vitest';
import { materialById } from '../../../db/stores/material-store.ts';
import { setMaterialBuying } from '../../../db/stores/supplier-store.ts';
import { undoChange } from '../../../src/usecases/changes/undo-change.ts';
import { takeConsumables } from '../../../src/usecases/plan/take-consumables.ts';
import { recordPour } from '../../../src/usecases/today/record-pour.ts';
import { doneOf } from '../../support/outcomes.ts';
import { smallYard } from '../../support/small-yard.ts';
import { yardContext } from '../../support/yard-context.ts';

const OIL = { id: 'oil', name: 'Release oil', unit: 'l', onHand: 2, pack: 5, minimum: 0, kerfMm: 0, leadDays: 0 };
const pour = (mould: string) => ({ mould, casting: 'panel-900', filledAt: '2027-04-10T09:00:00+01:00' });

// Two moulds filled: 2 - 0.3 for the batch - 2 x 0.2.
test('what is used up without a recipe goes with each batch and each mould filled', async () => {
  const { database } = await yardContext(smallYard({ materials: [...smallYard().materials, OIL] }));
  await database.write(async (tx) => {
    await setMaterialBuying(tx, 'oil', { breaks: [], perTurn: 0.2, perBatch: 0.3 });
    const batch = { mix: 'thin', bags: 1, pours: [pour('900 no. 1'), pour('900 no. 2')] };
    await takeConsumables(tx, [{ kind: 'poured', at: '2027-04-10T09:10:00+01:00', ...batch }]);
    expect((await materialById(tx, 'oil'))?.onHand).toBeCloseTo(1.3, 9);
    await takeConsumables(tx, [{ kind: 'coated', at: '2027-04-10T09:10:00+01:00', mould: '900 no. 1' }]);
    expect((await materialById(tx, 'oil'))?.onHand).toBeCloseTo(1.3, 9);
  });
});

test('what was used up so comes back when the batch is undone, and is used up again when it is done again', async () => {
  const yard = smallYard({ materials: [...smallYard().materials, OIL] });
  const context = { ...(await yardContext(yard)), now: '2027-04-10T12:30:00+01:00' };
  const { database } = context;
  await database.write((tx) => setMaterialBuying(tx, 'oil', { breaks: [], perTurn: 0.2, perBatch: 0.3 }));
  const oil = async () => (await database.read((tx) => materialById(tx, 'oil')))?.onHand;
  const pours = ['900 no. 1', '900 no. 2'].map((mould) => ({
    mould,
    casting: 'panel-900',
    order: null,
    sealed: false,
  }));
  const recorded = () => recordPour(context, { pours, bags: 1, filledAt: null });
  const used = doneOf(await recorded());
  expect(await oil()).toBeCloseTo(1.3, 9);
  doneOf(await undoChange(context, used.change));
  expect(await oil()).toBe(2);
  doneOf(await recorded());
  expect(await oil()).toBeCloseTo(1.3, 9);
});
