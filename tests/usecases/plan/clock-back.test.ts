import { expect, test } from 'vitest';
import { countMaterial } from '../../../src/usecases/buying/count-material.ts';
import { undoChange } from '../../../src/usecases/changes/undo-change.ts';
import { exportYard } from '../../../src/usecases/files/export-file.ts';
import { showFirst } from '../../../src/usecases/first/show-first.ts';
import { showMoulds } from '../../../src/usecases/moulds/show-moulds.ts';
import { currentPlan } from '../../../src/usecases/plan/make-plan.ts';
import { recordPour } from '../../../src/usecases/today/record-pour.ts';
import { showToday } from '../../../src/usecases/today/show-today.ts';
import { doneOf } from '../../support/outcomes.ts';
import { plannedYard } from '../../support/planned-yard.ts';
import { yardContext } from '../../support/yard-context.ts';

/* A pour recorded while the clock was a week ahead, or two minutes, made every page and every write fail once it was right. */
test.each([
  ['a week', '2027-04-17T10:00:00+01:00', '2027-04-10T10:00:00+01:00'],
  ['two minutes', '2027-04-10T10:02:00+01:00', '2027-04-10T10:00:00+01:00'],
])('a clock that was %s ahead and is put right locks nothing', async (_how, ahead, right) => {
  const { database } = await yardContext(plannedYard());
  const at = (now: string) => ({ database, now });
  await currentPlan(at(ahead));
  const pour = { mould: '900 no. 1', casting: 'panel-900', order: null, sealed: false };
  const poured = doneOf(await recordPour(at(ahead), { pours: [pour], bags: 1, filledAt: null }));

  const today = await showToday(at(right));
  expect(today.toCome).toEqual([{ mould: '900 no. 1', filledAt: ahead }]);
  await showFirst(at(right));
  await showMoulds(at(right));
  doneOf(await countMaterial(at(right), 'rod', { text: '5' }));
  await exportYard(at(right));
  // It counts as filled just now: its strip is planned for no sooner than it may be.
  const { plan } = await currentPlan(at(right));
  const strip = plan.strips.find(({ mould }) => mould === '900 no. 1');
  expect(strip === undefined || Date.parse(strip.stripStart) >= Date.parse(right) + 75 * 60_000).toBe(true);
  doneOf(await undoChange(at(right), poured.change));
  expect((await showToday(at(right))).toCome).toEqual([]);
});
