import { expect, test } from 'vitest';
import { applyYardFile } from '../../../db/stores/apply-yard-file.ts';
import { wetCuresOfMixes } from '../../../db/stores/mix-wet-cure-store.ts';
import { addWorkRecords } from '../../../db/stores/work-record-store.ts';
import { loadYardFile } from '../../../db/stores/yard-store.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { WorkRecord } from '../../../shared/work-record.ts';
import { done } from '../../../src/usecases/core/context.ts';
import { showPieces } from '../../../src/usecases/pieces/show-pieces.ts';
import { wetCures } from '../../../src/usecases/pieces/wet-cures.ts';
import { changing } from '../../../src/usecases/plan/changing.ts';
import { currentPlan } from '../../../src/usecases/plan/make-plan.ts';
import { showToday } from '../../../src/usecases/today/show-today.ts';
import { editMix } from '../../../src/usecases/yard/edit-mix.ts';
import { showYardMixes } from '../../../src/usecases/yard/show-yard-mixes.ts';
import { archived } from '../../support/archived.ts';
import { doneOf } from '../../support/outcomes.ts';
import { refusedFor, savedAnyway } from '../../support/saving.ts';
import { smallYard } from '../../support/small-yard.ts';
import { yardContext } from '../../support/yard-context.ts';

const stripped = (at: string, cameOut: 'good' | 'scrap' = 'good'): WorkRecord => ({
  ...{ kind: 'stripped', at, mould: '900 no. 1', casting: 'panel-900', filledAt: at, cameOut },
});

const wetAt = (now: string, records: WorkRecord[], count = 5) => {
  const yard = smallYard({ finished: [{ casting: 'panel-900', count }] });
  return wetCures(yard, records, new Map([['thin', 48]]), minuteOf(now));
};

const SATURDAY = [
  stripped('2027-04-10T10:00:00+01:00'),
  stripped('2027-04-10T11:00:00+01:00'),
  stripped('2027-04-10T11:30:00+01:00', 'scrap'),
];

test('good pieces are kept wet for the hours of their mix, until the last of them may dry', () => {
  const panel = { casting: 'panel-900', piece: 'Panel 900', until: '2027-04-12T11:00:00+01:00', minutes: 0 };
  expect(wetAt('2027-04-11T09:00:00+01:00', SATURDAY)).toEqual([{ ...panel, count: 2 }]);
  expect(wetAt('2027-04-12T10:30:00+01:00', SATURDAY)).toEqual([{ ...panel, count: 1 }]);
  expect(wetAt('2027-04-12T11:00:00+01:00', SATURDAY)).toEqual([]);
});

test('what is no longer in the yard is nobody’s to keep wet', () => {
  expect(wetAt('2027-04-11T09:00:00+01:00', SATURDAY, 1)).toMatchObject([{ count: 1 }]);
});

test('the hours are said in the form of the mix, go with an archive, and stand in no yard file', async () => {
  const context = await yardContext();
  const { mixes } = await showYardMixes(context);
  const texts = mixes[0]!.texts;
  expect(texts.wetCureHours).toBe('');
  expect(await refusedFor(context, editMix('thin', { ...texts, wetCureHours: '9999' }))).toMatchObject([
    expect.stringContaining('wetCureHours'),
  ]);
  await savedAnyway(context, editMix('thin', { ...texts, wetCureHours: '48' }));
  expect((await showYardMixes(context)).mixes[0]?.texts.wetCureHours).toBe('48');
  const { other, text, again } = await archived(context);
  expect(again).toBe(text);
  expect(await other.database.read(wetCuresOfMixes)).toEqual(new Map([['thin', 48]]));
});

test('with minutes for it they stand in the yard file, the plan leaves them free, and pages say when', async () => {
  const context = await yardContext();
  const { texts } = (await showYardMixes(context)).mixes[0]!;
  for (const wetCureHours of ['', '0']) {
    const lacking = editMix('thin', { ...texts, wetCureHours, wetCureMinutes: '10' });
    expect(await refusedFor(context, lacking)).toMatchObject([expect.stringContaining('wetCureHours')]);
  }
  await savedAnyway(context, editMix('thin', { ...texts, wetCureHours: '200', wetCureMinutes: '10' }));
  const { yard } = await currentPlan(context);
  expect(yard.mixes[0]!.wetCure).toEqual({ hours: 200, minutes: 10 });
  const { session } = await showToday(context);
  expect([session?.wet?.start, session?.wet?.end].map((at) => at?.slice(11, 16))).toEqual(['08:00', '08:10']);
  const { other, text, again } = await archived(context);
  expect(again).toBe(text);
  expect((await currentPlan(other)).yard.mixes[0]!.wetCure).toEqual({ hours: 200, minutes: 10 });
  // A yard file that says nothing of it leaves the hours, for which Today reminds as before.
  const { wetCure: _wet, ...mix } = yard.mixes[0]!;
  await other.database.write((tx) => applyYardFile(tx, { ...yard, mixes: [mix, ...yard.mixes.slice(1)] }));
  expect(await other.database.read(wetCuresOfMixes)).toEqual(new Map([['thin', 200]]));
  expect((await other.database.read((tx) => loadYardFile(tx, context.now))).mixes[0]).not.toHaveProperty('wetCure');
});

/* A month of work is more than what is recorded in a day. */
test('Today reminds of a piece that is kept wet for weeks, whatever was recorded since', async () => {
  const context = await yardContext(smallYard({ finished: [{ casting: 'panel-900', count: 1 }] }));
  const { texts } = (await showYardMixes(context)).mixes[0]!;
  await savedAnyway(context, editMix('thin', { ...texts, wetCureHours: '600' }));
  const at = '2027-04-07T10:00:00+01:00';
  const since = Array.from(
    { length: 300 },
    (): WorkRecord => ({
      ...{ kind: 'marked', at: '2027-04-08T07:00:00+01:00', mould: '900 no. 1', mark: 'cleaned' },
    }),
  );
  const what = { kind: 'stripped', words: 'A piece stripped' };
  doneOf(
    await changing(context, what, async (tx) => {
      await addWorkRecords(tx, [stripped(at), ...since]);
      return done(null);
    }),
  );
  expect((await showToday(context)).wetCures).toMatchObject([{ piece: 'Panel 900', count: 1 }]);
  const { kinds } = await showPieces(context);
  expect(kinds.find(({ casting }) => casting === 'panel-900')?.wet).toMatchObject({ count: 1 });
});
