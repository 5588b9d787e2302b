import { expect, test } from 'vitest';
import { addWorkRecords, workRecords } from '../../../db/stores/work-record-store.ts';
import type { WorkRecord } from '../../../shared/work-record.ts';
import { done } from '../../../src/usecases/core/context.ts';
import { changing } from '../../../src/usecases/plan/changing.ts';
import { tellBatch } from '../../../src/usecases/trace/tell-batch.ts';
import { doneOf, refusalOf } from '../../support/outcomes.ts';
import { yardContext } from '../../support/yard-context.ts';

const at = '2027-04-08T09:22:00+01:00';
const poured: WorkRecord = {
  ...{ kind: 'poured', at, mix: 'thin', bags: 1 },
  pours: [{ mould: '900 no. 1', casting: 'panel-900', filledAt: at }],
  ...{ by: 'Anna', mixedFrom: '2027-04-08T09:00:00+01:00', tappedAt: '2027-04-08T09:24:00+01:00' },
};
const key = { minute: Date.parse(at) / 60_000, mould: '900 no. 1' };

const withBatch = async () => {
  const context = await yardContext();
  doneOf(
    await changing(context, { kind: 'poured', words: 'A batch' }, async (tx) => {
      await addWorkRecords(tx, [poured]);
      return done(null);
    }),
  );
  return { context, batch: async () => (await context.database.read(workRecords))[0] };
};

/* The minute of the tap was lost, and with it what mixing and filling had taken. */
test('what is told of a batch later takes nothing from what its taps told', async () => {
  const { context, batch } = await withBatch();
  doneOf(await tellBatch(context, key, { by: 'Ben', waterLitres: 4.5 }));
  expect(await batch()).toEqual({ ...poured, by: 'Ben', waterLitres: 4.5 });
  doneOf(await tellBatch(context, key, { waterLitres: 4.5 }));
  const { by: _by, ...rest } = poured as WorkRecord & { by: string };
  expect(await batch()).toEqual({ ...rest, waterLitres: 4.5 });
});

test('what a batch says already is told to be so', async () => {
  const { context, batch } = await withBatch();
  expect(refusalOf(await tellBatch(context, key, { by: 'Anna' }))).toBe(
    'batch: It says so already. Nothing was changed.',
  );
  expect(await batch()).toEqual(poured);
});
