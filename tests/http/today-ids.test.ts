import { expect, test } from 'vitest';
import { recordPour } from '../../src/usecases/today/record-pour.ts';
import { showToday } from '../../src/usecases/today/show-today.ts';
import { demoSaturday } from '../support/demo-saturday.ts';
import { doneOf } from '../support/outcomes.ts';
import { screensOn } from '../support/screens.ts';

/* A mould to be stripped, and to be poured again alone: its two steps had fields of one id, and a label led to the other. */
test('no id stands twice on Today, though a mould has several steps', async () => {
  const { context } = await demoSaturday();
  const at = context('09:12');
  const { steps } = await showToday(at);
  const first = steps.find((step) => step.kind === 'batch');
  if (first?.kind !== 'batch') throw new Error('There is no batch.');
  const pours = first.pours.map(({ mould, casting, order, sealed }) => ({ mould, casting, order, sealed }));
  doneOf(await recordPour(at, { pours, bags: first.bags, filledAt: null }));
  const html = await (await screensOn(at.database, at.now).get('/today')).text();
  const ids = [...html.matchAll(/\sid="([^"]*)"/g)].map(([, id]) => id);
  expect(ids.length).toBeGreaterThan(20);
  expect(ids.filter((id, i) => ids.indexOf(id) !== i)).toEqual([]);
});
