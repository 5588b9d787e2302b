import { describe, expect, test } from 'vitest';
import { updateMould } from '../../../db/stores/mould-store.ts';
import type { PlanFile } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import { calendarOf } from '../../../src/engine/calendar/calendar.ts';
import { undoChange } from '../../../src/usecases/changes/undo-change.ts';
import { currentPlan } from '../../../src/usecases/plan/make-plan.ts';
import { recordBefore } from '../../../src/usecases/today/record-before.ts';
import { showToday } from '../../../src/usecases/today/show-today.ts';
import { startMixing } from '../../../src/usecases/today/start-mixing.ts';
import { stepHours } from '../../../views/today/today-text.ts';
import { demoAt, demoSaturday } from '../../support/demo-saturday.ts';
import { doneOf, refusalOf } from '../../support/outcomes.ts';
import { plannedYard, saturday } from '../../support/planned-yard.ts';
import { screensOn, textOf } from '../../support/screens.ts';
import { smallYard } from '../../support/small-yard.ts';
import { yardContext } from '../../support/yard-context.ts';

/** The planned yard on its Saturday, with an order for five panels more than there are: its two moulds take a second turn. */
const twoTurns = () => {
  const { yard, materials } = plannedYard();
  return plannedYard({
    yard: { ...yard, now: saturday('07:30') },
    work: [{ rule: 'FREQ=WEEKLY;BYDAY=SA', from: '2027-01-02', start: '08:00', end: '13:30' }],
    materials: materials.map((material) => ({ ...material, onHand: 10 })),
    moulds: smallYard().moulds,
    orders: [{ id: '27-001', customer: 'School garden', due: '2027-04-17', lines: [{ kit: 'pair', quantity: 3 }] }],
  });
};

/** The first mould and the two pours that fill it on that Saturday, by the plan. */
const turnsOf = ({ pours }: PlanFile) => {
  const own = pours.filter(({ mould }) => mould === '900 no. 1').sort((a, b) => (a.fillEnd < b.fillEnd ? -1 : 1));
  const [first, second] = own;
  if (!first || !second || second.fillEnd > saturday('13:30')) throw new Error('no second turn');
  return { first, second };
};

const clockOf = (instant: string) => instant.slice(11, 16);

/** The yard a minute after the batch of the second turn was to be mixed, with nothing recorded; all that is asked is read off the plan. */
const secondTurn = async () => {
  const { database, now } = await yardContext(twoTurns());
  const { plan } = await currentPlan({ database, now });
  const { first, second } = turnsOf(plan);
  const startOf = (id: string) => plan.batches.find((batch) => batch.id === id)!.start;
  const start = startOf(second.batch);
  const minuteAfter = calendarOf('Europe/Dublin').instantText(minuteOf(start) + 1);
  const context = { database, now: minuteAfter };
  const seen = async () => {
    const { steps, waiting } = await showToday(context);
    const batch = steps.find((step) => step.kind === 'batch' && step.at > first.stripStart);
    if (batch?.kind !== 'batch') throw new Error('no batch');
    return { batch, waits: waiting.find(({ step }) => step === batch.name) };
  };
  return { context, database, seen, start, first: { ...first, start: startOf(first.batch) } };
};

describe('a batch whose mould is still full by the book', () => {
  test('says what is not recorded before it: the turn before, and the set-ups of both', async () => {
    const { seen, start, first } = await secondTurn();
    const { batch, waits } = await seen();
    expect(batch).toMatchObject({ at: start, waits: true });
    const before = waits!.before.map(({ kind, at }) => `${kind} ${clockOf(at)}`);
    expect(before.at(0)).toBe(`prep ${clockOf(first.prepStart)}`);
    expect(before).toContain(`batch ${clockOf(first.start)}`);
    expect(before).toContain(`strip ${clockOf(first.stripStart)}`);
  });

  test('can be recorded after one tap that records all of that as planned', async () => {
    const { context, seen } = await secondTurn();
    const { batch, waits } = await seen();
    const { words } = doneOf(await recordBefore(context, { before: batch.name }));
    expect(words).toMatch(/^\d pieces poured, \d stripped, \d moulds set up as planned$/);
    const after = await seen();
    expect([after.batch.waits, after.waits]).toEqual([false, undefined]);
    expect(waits!.before.length).toBeGreaterThan(2);
  });

  test('can be begun at once: what is over counts as done', async () => {
    const { context, seen } = await secondTurn();
    const { batch } = await seen();
    doneOf(await startMixing(context, { mould: batch.pours[0]!.mould, at: batch.at }));
    expect((await seen()).batch.at).toBe(context.now);
  });

  test('is refused where it is asked, where one of these moulds is damaged', async () => {
    const { context, seen } = await secondTurn();
    const { batch, waits } = await seen();
    await context.database.write((tx) => updateMould(tx, '900 no. 1', { condition: 'damaged' }));
    expect(refusalOf(await recordBefore(context, { before: batch.name }))).toMatch(
      /^before: 900 no\. 1 is marked damaged\./,
    );
    expect(waits!.before.length).toBeGreaterThan(2);
  });

  test('tapped twice, it is recorded once; undone, all of it is to be recorded again', async () => {
    const { context, seen } = await secondTurn();
    const { batch, waits } = await seen();
    const { change } = doneOf(await recordBefore(context, { before: batch.name }));
    expect(doneOf(await recordBefore(context, { before: batch.name })).change).toBe(change);
    doneOf(await undoChange(context, change));
    const names = (facts: typeof waits) => facts!.before.map(({ name }) => name);
    expect(names((await seen()).waits)).toEqual(names(waits));
  });

  test('shows both taps on Today, and what is not recorded', async () => {
    const { context, database, seen, first } = await secondTurn();
    const { batch } = await seen();
    const { get, post, textAfter } = screensOn(database, context.now);
    const html = await (await get('/today')).text();
    const from = html.indexOf(`>${stepHours(batch).from}<`);
    const step = html.slice(from, html.indexOf('</li><li class="step', from));
    const out = stepHours({ at: first.stripStart, until: first.stripEnd }).from;
    expect(await textOf(new Response(step))).toMatch(
      new RegExp(`Not recorded before it: .*strip 900 no\\. 1 \\(${out}\\)`),
    );
    expect(step).toContain('action="/today/mixing"');
    const said = await textAfter(await post('/today/before-it', { before: batch.name }));
    expect(said).toContain('stripped');
  });
});

test('nothing that waits for something still to come can be recorded yet', async () => {
  const { context } = await demoSaturday();
  const { steps, waiting } = await showToday(context('09:00'));
  expect(steps.some((step) => step.kind === 'batch' && step.waits)).toBe(true);
  expect(waiting.filter(({ step }) => steps.find(({ name }) => name === step)!.at > demoAt('10:30'))).toEqual([]);
});

test.each(['late-batch-1-900%20no.%201', 'no step'])('of %s there is nothing to be recorded', async (before) => {
  const { context } = await demoSaturday();
  expect(refusalOf(await recordBefore(context('11:44'), { before }))).toBe(
    'before: There is nothing before it to be recorded. Nothing was changed.',
  );
});
