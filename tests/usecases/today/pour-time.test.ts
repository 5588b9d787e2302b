import { expect, test } from 'vitest';
import { mouldById } from '../../../db/stores/mould-store.ts';
import { recentWorkRecords } from '../../../db/stores/work-record-store.ts';
import { minuteOf } from '../../../shared/time.ts';
import { calendarOf } from '../../../src/engine/calendar/calendar.ts';
import { currentPlan } from '../../../src/usecases/plan/make-plan.ts';
import { recordPour } from '../../../src/usecases/today/record-pour.ts';
import { recordStrip } from '../../../src/usecases/today/record-strip.ts';
import { doneOf, refusalOf } from '../../support/outcomes.ts';
import { plannedMorning } from '../../support/planned-morning.ts';
import { plannedYard, saturday } from '../../support/planned-yard.ts';
import { yardContext } from '../../support/yard-context.ts';

/** One mould recorded at 09:29 as full by then: what was kept of it, or what was wrong. */
const filledAt = async (typed: string) => {
  const { database } = await yardContext(plannedYard());
  const pours = [{ mould: '900 no. 1', casting: 'panel-900', order: null, sealed: false }];
  const outcome = await recordPour({ database, now: saturday('09:29') }, { pours, bags: null, filledAt: typed });
  if (!outcome.ok) return outcome.faults[0]?.message;
  return (await database.read((tx) => mouldById(tx, '900 no. 1')))?.piece?.filledAt;
};

const toCome = 'That time is still to come.';

test.each([
  ['09:28', saturday('09:28')],
  ['09:29', saturday('09:29')],
  ['09:30', toCome],
  [saturday('09:29'), saturday('09:29')],
  [saturday('09:30'), toCome],
  ['9:28', 'When? Write a time such as 10:45. Nothing was changed.'],
  ['24:00', 'When? Write a time such as 10:45. Nothing was changed.'],
])('a mould that was full at %s', async (typed, kept) => expect(await filledAt(typed)).toBe(kept));

const pours = [{ mould: '900 no. 1', casting: 'panel-900', order: null, sealed: false }];

/* Whoever taps has washed out the mixer: up to five minutes after that its moulds were full when they were to be. */
test.each([
  [5, true],
  [6, false],
])('a batch that is tapped %i minutes after its end was full as planned: %s', async (late, isAsPlanned) => {
  const { at } = await plannedMorning();
  const { plan } = await currentPlan(at('07:30'));
  const [batch, pour] = [plan.batches[0]!, plan.pours[0]!];
  const now = calendarOf('Europe/Dublin').instantText(minuteOf(batch.end) + late);
  const { database } = at('07:30');
  doneOf(await recordPour({ database, now }, { pours, bags: null, filledAt: null }));
  const mould = await database.read((tx) => mouldById(tx, '900 no. 1'));
  expect(mould?.piece?.filledAt).toBe(isAsPlanned ? pour.fillEnd : now);
});

/* Filling takes 7 minutes. */
test('nothing was filled into a mould before it was emptied', async () => {
  const filledFirst = { mould: '900 no. 1', casting: 'panel-900', filledAt: '2027-04-08T08:00:00+01:00' };
  const { database } = await yardContext(plannedYard({ inMould: [filledFirst] }));
  const now = saturday('10:30');
  const out = { mould: '900 no. 1', cameOut: 'good' as const, reason: '', at: saturday('10:00') };
  doneOf(await recordStrip({ database, now }, out));
  const told = (clock: string) => recordPour({ database, now }, { pours, bags: null, filledAt: clock });
  expect(refusalOf(await told('10:06'))).toBe('filledAt: 900 no. 1 was emptied only at 10:00.');
  expect((await told('10:07')).ok).toBe(true);
});

/** What the book keeps of a batch that is told at 9:40. */
const keptOf = async (record: Partial<Parameters<typeof recordPour>[1]>, by?: string) => {
  const { database } = await yardContext(plannedYard());
  const context = { database, now: saturday('09:40'), ...(by === undefined ? {} : { by }) };
  doneOf(await recordPour(context, { pours, bags: null, filledAt: null, ...record }));
  const [kept] = await database.read(recentWorkRecords);
  return kept;
};

test('who says it has mixed it, unless somebody else is named', async () => {
  expect(await keptOf({}, 'Ana')).toMatchObject({ by: 'Ana' });
  expect(await keptOf({ told: { by: 'Ben' } }, 'Ana')).toMatchObject({ by: 'Ben' });
});

test('a tap that had to wait was at its own minute, and a time that is told is no tap', async () => {
  expect(await keptOf({ tapped: true, filledAt: saturday('09:31') })).toMatchObject({ tappedAt: saturday('09:31') });
  expect(await keptOf({ tapped: true })).toMatchObject({ tappedAt: saturday('09:40') });
  expect(await keptOf({ filledAt: '09:31' })).not.toHaveProperty('tappedAt');
});
