import { expect, test } from 'vitest';
import { addWorkRecords, workRecords } from '../../../db/stores/work-record-store.ts';
import { undoChange } from '../../../src/usecases/changes/undo-change.ts';
import { lookAgain } from '../../../src/usecases/today/look-again.ts';
import { recordPour } from '../../../src/usecases/today/record-pour.ts';
import { recordStrip } from '../../../src/usecases/today/record-strip.ts';
import { showToday } from '../../../src/usecases/today/show-today.ts';
import { showMeasured } from '../../../src/usecases/yard/show-measured.ts';
import { takeMeasured } from '../../../src/usecases/yard/take-measured.ts';
import { doneOf } from '../../support/outcomes.ts';
import { plannedMorning } from '../../support/planned-morning.ts';
import { savedAnyway } from '../../support/saving.ts';

const MOULD = '900 no. 1';

test('a mix that was not hard by its time three times is offered another time, taken over by one tap and back', async () => {
  const { at } = await plannedMorning();
  const pours = [{ mould: MOULD, casting: 'panel-900', order: '27-001', sealed: false, filledAt: at('08:39').now }];
  doneOf(await recordPour(at('08:40'), { pours, bags: 1, filledAt: at('08:39').now }));
  doneOf(await lookAgain(at('09:56'), MOULD));
  doneOf(await recordStrip(at('10:15'), { mould: MOULD, cameOut: 'good', reason: '', tapped: true }));
  expect((await showToday(at('10:16'))).hardOtherwise).toEqual([]);
  // The same of two more pieces, of the days before.
  const { database } = at('10:16');
  const records = await database.read(workRecords);
  const own = records.filter(({ kind }) => kind === 'not hard' || kind === 'stripped');
  expect(own.map(({ kind }) => kind)).toEqual(['not hard', 'stripped']);
  const daysBefore = (days: number) =>
    JSON.parse(JSON.stringify(own), (_key, value) =>
      typeof value === 'string' && /^\d{4}-\d\d-\d\dT/.test(value)
        ? new Date(Date.parse(value) - days * 86_400_000).toISOString()
        : value,
    );
  await database.write((tx) => addWorkRecords(tx, [...daysBefore(1), ...daysBefore(2)]));
  const [thin] = (await showToday(at('10:17'))).hardOtherwise;
  expect(thin).toMatchObject({ count: 3, figure: 75, changes: [{ after: 96 }, { before: 137, after: 176 }] });
  expect((await showMeasured(at('10:17'))).strips).toHaveLength(1);
  const fields = { what: 'strips', id: thin!.mix, minutes: thin!.key };
  const taken = await savedAnyway(at('10:18'), takeMeasured(fields));
  expect((await showToday(at('10:19'))).hardOtherwise).toEqual([]);
  doneOf(await undoChange(at('10:20'), taken));
  expect((await showToday(at('10:21'))).hardOtherwise).toHaveLength(1);
});
