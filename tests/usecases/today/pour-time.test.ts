import { expect, test } from 'vitest';
import { mouldById } from '../../../db/stores/mould-store.ts';
import { recordPour } from '../../../src/usecases/today/record-pour.ts';
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
