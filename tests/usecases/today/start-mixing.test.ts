import { describe, expect, test } from 'vitest';
import { workRecords } from '../../../db/stores/work-record-store.ts';
import { countMaterial } from '../../../src/usecases/buying/count-material.ts';
import { undoChange } from '../../../src/usecases/changes/undo-change.ts';
import { endMixing } from '../../../src/usecases/today/end-mixing.ts';
import { recordPour } from '../../../src/usecases/today/record-pour.ts';
import { recordPrep } from '../../../src/usecases/today/record-prep.ts';
import { showToday } from '../../../src/usecases/today/show-today.ts';
import { startMixing } from '../../../src/usecases/today/start-mixing.ts';
import { doneOf, refusalOf } from '../../support/outcomes.ts';
import { plannedMorning } from '../../support/planned-morning.ts';
import { saturday } from '../../support/planned-yard.ts';

/* The plan of that morning is told of in `plannedMorning`. */
const BATCH = { mould: '900 no. 1', at: saturday('08:22') };

const morning = async () => {
  const { at, plannedAt } = await plannedMorning();
  /** How many batches; and of the one pour: mixed from, full at, out from, and when the order is packed. */
  const times = async (clock: string) => {
    const { batches, instants } = await plannedAt(clock);
    return [batches, ...instants.map((instant) => instant?.slice(8, 16))];
  };
  return { at, times };
};

test('by hand', async () => {
  const { times } = await morning();
  expect(await times('07:31')).toEqual([1, '10T08:22', '10T08:39', '10T09:54', '10T10:02']);
});

describe('mixing begun', () => {
  /* Full eight minutes later, at 8:47: out from 10:02, packed from 10:10. */
  test('later than planned moves what comes after it', async () => {
    const { at, times } = await morning();
    const { words } = doneOf(await startMixing(at('08:30'), BATCH));
    expect(words).toBe('Mixing begun for 900 no. 1');
    expect(await times('08:31')).toEqual([1, '10T08:30', '10T08:47', '10T10:02', '10T10:10']);
    const { begun } = await showToday(at('08:31'));
    expect(begun.map(({ step }) => [step.kind, step.at])).toEqual([['batch', saturday('08:30')]]);
  });

  /* Its mould is set up at 8:18 already: full at 8:36, and stripped when it was to be. */
  test('sooner than planned leaves what comes after it, once its mould is set up', async () => {
    const { at, times } = await morning();
    expect(refusalOf(await startMixing(at('08:19'), BATCH))).toBe(
      'at: 900 no. 1 is not set up yet. Mark it ready to pour first. Nothing was changed.',
    );
    doneOf(await recordPrep(at('08:18'), { mould: '900 no. 1', casting: 'panel-900', sealed: false }));
    doneOf(await startMixing(at('08:19'), BATCH));
    expect(await times('08:20')).toEqual([1, '10T08:19', '10T08:36', '10T09:54', '10T10:02']);
  });

  /* Full at 11:47: its piece comes out next Saturday, from 8:10 on, and the order is packed then. */
  test('so late that the rest no longer fits is planned anew round it', async () => {
    const { at, times } = await morning();
    const { moved } = doneOf(await startMixing(at('11:30'), BATCH));
    expect((await times('11:31')).slice(0, 4)).toEqual([1, '10T11:30', '10T11:47', '17T08:10']);
    expect(moved).toMatchObject([{ order: '27-001', from: '2027-04-10', to: '2027-04-17' }]);
  });

  test('is one change that is undone, and done again', async () => {
    const { at, times } = await morning();
    const planned = await times('08:29');
    const { change } = doneOf(await startMixing(at('08:30'), BATCH));
    const begun = await times('08:31');
    const back = doneOf(await undoChange(at('08:32'), change));
    expect(await times('08:32')).toEqual(planned);
    doneOf(await undoChange(at('08:33'), back.change));
    expect(await times('08:34')).toEqual(begun);
  });

  test('is undone also when other things were done since: the batch stands where it was', async () => {
    const { at, times } = await morning();
    const planned = await times('08:29');
    const { change } = doneOf(await startMixing(at('08:30'), BATCH));
    doneOf(await countMaterial(at('08:31'), 'mesh', { text: '5' }));
    doneOf(await undoChange(at('08:32'), change));
    expect((await times('08:33')).slice(0, 3)).toEqual(planned.slice(0, 3));
  });

  test.each([
    ['a batch that is not there', { mould: '900 no. 2', at: saturday('08:22') }],
    ['a time that is none', { mould: '900 no. 1', at: 'now' }],
    ['another day', { mould: '900 no. 1', at: '2027-04-17T08:22:00+01:00' }],
  ])('is refused for %s', async (_of, named) => {
    const { at } = await morning();
    expect(refusalOf(await startMixing(at('08:30'), named))).toBe(
      'at: That batch is no longer planned for this time. Look again; nothing was changed.',
    );
  });

  test('is refused at the minute at which it begins as it is', async () => {
    const { at } = await morning();
    expect(refusalOf(await startMixing(at('08:22'), BATCH))).toMatch(/It begins at this minute as it is\./);
  });
});

describe('mixed, and filled from then on', () => {
  test('is kept with the batch once it is poured, said once, and only of one that is being mixed', async () => {
    const { at } = await morning();
    const mixed = { moulds: [BATCH.mould], at: null };
    expect(refusalOf(await endMixing(at('08:30'), mixed))).toContain('at: Tap “Mixing now” first');
    doneOf(await startMixing(at('08:30'), BATCH));
    const { words, plan } = doneOf(await endMixing(at('08:42'), mixed));
    expect(words).toBe('Mixed, and being filled: 900 no. 1');
    expect(plan.batches[0]?.start).toBe(saturday('08:30'));
    expect(refusalOf(await endMixing(at('08:43'), mixed))).toBe('at: That is recorded already. Nothing was changed.');
    const filledAt = at('08:49').now;
    const pours = [{ mould: BATCH.mould, casting: 'panel-900', order: '27-001', sealed: false, filledAt }];
    doneOf(await recordPour(at('08:49'), { pours, bags: 1, filledAt: null }));
    const records = await at('08:50').database.read(workRecords);
    expect(records.find(({ kind }) => kind === 'poured')).toMatchObject({
      ...{ mixedFrom: saturday('08:30'), mixedAt: saturday('08:42') },
    });
  });
});
