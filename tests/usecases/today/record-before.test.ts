import { describe, expect, test } from 'vitest';
import { undoChange } from '../../../src/usecases/changes/undo-change.ts';
import { recordBefore } from '../../../src/usecases/today/record-before.ts';
import { showToday } from '../../../src/usecases/today/show-today.ts';
import { startMixing } from '../../../src/usecases/today/start-mixing.ts';
import { demoAt, demoSaturday } from '../../support/demo-saturday.ts';
import { doneOf, refusalOf } from '../../support/outcomes.ts';
import { screensOn, textOf } from '../../support/screens.ts';

/**
 * The demo at 11:44 with nothing recorded: 900 no. 1 was filled at 8:45, is out at 11:20 and set up again by 11:40; at 11:45
 * it is filled once more, with 450 no. 2.
 */
const CLOCK = '11:44';

const secondTurn = async () => {
  const { context, database } = await demoSaturday();
  const seen = async () => {
    const { steps, waiting } = await showToday(context(CLOCK));
    const batch = steps.find((step) => step.kind === 'batch' && step.at > demoAt('11:20'));
    if (batch?.kind !== 'batch') throw new Error('no batch');
    return { batch, waits: waiting.find(({ step }) => step === batch.name) };
  };
  return { context, database, seen };
};

describe('a batch whose mould is still full by the book', () => {
  test('says what is not recorded before it: the turn before, and the set-ups of both', async () => {
    const { seen } = await secondTurn();
    const { batch, waits } = await seen();
    expect(batch.waits).toBe(true);
    const before = waits!.before.map(({ kind, at }) => `${kind} ${at.slice(11, 16)}`);
    expect(before).toContain('strip 11:17');
    expect(before.at(0)).toBe('prep 08:10');
    expect(before).toContain('batch 08:34');
  });

  test('can be recorded after one tap that records all of that as planned', async () => {
    const { context, seen } = await secondTurn();
    const { batch, waits } = await seen();
    const { words } = doneOf(await recordBefore(context(CLOCK), { before: batch.name }));
    expect(words).toMatch(/^\d pieces poured, \d stripped, \d moulds set up as planned$/);
    const after = await seen();
    expect([after.batch.waits, after.waits]).toEqual([false, undefined]);
    expect(waits!.before.length).toBeGreaterThan(2);
  });

  test('can be begun at once: what is over counts as done', async () => {
    const { context, seen } = await secondTurn();
    const { batch } = await seen();
    doneOf(await startMixing(context(CLOCK), { mould: batch.pours[0]!.mould, at: batch.at }));
    expect((await seen()).batch.at).toBe(demoAt(CLOCK));
  });

  test('tapped twice, it is recorded once; undone, all of it is to be recorded again', async () => {
    const { context, seen } = await secondTurn();
    const { batch, waits } = await seen();
    const { change } = doneOf(await recordBefore(context(CLOCK), { before: batch.name }));
    expect(doneOf(await recordBefore(context(CLOCK), { before: batch.name })).change).toBe(change);
    doneOf(await undoChange(context(CLOCK), change));
    const names = (facts: typeof waits) => facts!.before.map(({ name }) => name);
    expect(names((await seen()).waits)).toEqual(names(waits));
  });

  test('shows both taps on Today, and what is not recorded', async () => {
    const { database, seen } = await secondTurn();
    const { batch } = await seen();
    const { get, post, textAfter } = screensOn(database, demoAt(CLOCK));
    const html = await (await get('/today')).text();
    const step = html.slice(html.indexOf('>11:45<'), html.indexOf('</li><li class="step', html.indexOf('>11:45<')));
    expect(await textOf(new Response(step))).toMatch(/Not recorded before it: .*strip 900 no\. 1 \(11:20\)/);
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
  expect(refusalOf(await recordBefore(context(CLOCK), { before }))).toBe(
    'before: There is nothing before it to be recorded. Nothing was changed.',
  );
});
