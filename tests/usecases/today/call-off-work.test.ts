import { describe, expect, test } from 'vitest';
import { loadYardFile } from '../../../db/stores/yard-store.ts';
import type { YardFileInput } from '../../../shared/yard-file.ts';
import type { Outcome, UseCaseContext } from '../../../src/usecases/core/context.ts';
import { callOffWork } from '../../../src/usecases/today/call-off-work.ts';
import { onePersonFewer } from '../../../src/usecases/today/one-person-fewer.ts';
import { stopAt } from '../../../src/usecases/today/stop-at.ts';
import { refusalOf } from '../../support/outcomes.ts';
import { saturday } from '../../support/planned-yard.ts';
import { smallYard } from '../../support/small-yard.ts';
import { yardContext } from '../../support/yard-context.ts';

const base = smallYard();
const work = (crew: number) => ({ work: [{ ...base.work[0]!, crew }] });

/** What is said of a change of hours, and the hours of Saturday the 10th after it: "closed" or "08:00-12:00 x1". */
const changed = async (
  change: (context: UseCaseContext) => Promise<Outcome<unknown>>,
  changes: Partial<YardFileInput> = {},
) => {
  const context = await yardContext(smallYard(changes));
  const said = refusalOf(await change(context));
  const { closed, extra } = await context.database.read((tx) => loadYardFile(tx, context.now));
  const own = extra.filter(({ date }) => date === '2027-04-10').map((x) => `${x.start}-${x.end} x${x.crew}`);
  return [said, closed.includes('2027-04-10') ? ['closed', ...own] : ['usual', ...own]];
};

describe('no work on a day', () => {
  test('closes it', async () =>
    expect(await changed((context) => callOffWork(context, '2027-04-10'))).toEqual(['done', ['closed']]));

  test.each([
    ['2027-04-07', 'date: That day has passed. Nothing was changed.'],
    ['2027-04-11', /^date: There are no hours on Sun 11 Apr as it is\./],
  ])('%s is refused', async (date, why) => {
    const [said, hours] = await changed((context) => callOffWork(context, date));
    expect(said).toMatch(why);
    expect(hours).toEqual(['usual']);
  });
});

describe('a session that stops earlier', () => {
  const stop = (at: string, session = saturday('08:00')) => changed((context) => stopAt(context, { session, at }));

  test('ends at that time, that day alone', async () =>
    expect(await stop('11:30')).toEqual(['done', ['closed', '08:00-11:30 x1']]));

  test.each([
    ['08:00', 'at: Write a time between 08:00 and 12:00.'],
    ['12:00', 'at: Write a time between 08:00 and 12:00.'],
    ['noon', 'at: When? Write a time such as 11:30.'],
  ])('%s is refused', async (at, why) => expect(await stop(at)).toEqual([why, ['usual']]));

  test('no session begins then', async () =>
    expect(await stop('11:30', saturday('09:00'))).toEqual([expect.stringMatching(/^session: /), ['usual']]));
});

describe('one person fewer', () => {
  const fewer = (crew: number, window: number | null = 0) =>
    changed((context) => onePersonFewer(context, { session: saturday('08:00'), window }), work(crew));

  test('leaves the others their hours', async () =>
    expect(await fewer(2)).toEqual(['done', ['closed', '08:00-12:00 x1']]));

  test('where nobody would be left it is refused', async () =>
    expect(await fewer(1)).toEqual(['window: Nobody would be left. Say that there is no work instead.', ['usual']]));

  test('whose hours has to be said', async () =>
    expect(await fewer(2, null)).toEqual(["window: Choose who can't come.", ['usual']]));
});
