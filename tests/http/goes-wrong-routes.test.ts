import { describe, expect, test } from 'vitest';
import { onTheirWay, setExpected } from '../../db/stores/material-store.ts';
import { addWorkRecords } from '../../db/stores/work-record-store.ts';
import type { WorkRecord } from '../../shared/work-record.ts';
import { receiveMaterial } from '../../src/usecases/buying/receive-material.ts';
import { callOffWork } from '../../src/usecases/today/call-off-work.ts';
import { doneOf } from '../support/outcomes.ts';
import { demoScreens, screensOn, textOf } from '../support/screens.ts';
import { smallYard } from '../support/small-yard.ts';
import { yardContext } from '../support/yard-context.ts';

const stripped = (at: string, cameOut: 'good' | 'mend' | 'scrap'): WorkRecord => ({
  ...{ kind: 'stripped', mould: '900 no. 1', casting: 'panel-900', at, filledAt: at, cameOut },
});

describe('what goes wrong', () => {
  test('is guessed in a yard without a record, and says that it is', async () => {
    const { get } = await demoScreens();
    const text = await textOf(await get('/yard/goes-wrong'));
    expect(text).toMatch(/^No piece and no day of work is on record yet, so guesses are counted on\./);
    expect(text).toContain('Counted on: 1 in 20, a guess. Nothing is on record yet.');
    expect(text).toContain('No date hangs on this until 200 pieces and 100 days with work are on record');
  });

  // 1 of 20 guessed and 2 of 20 seen are 3 of 40; 1 of 15 and 1 of 3 are 2 of 18; a delivery three days late.
  test('is counted from what was recorded', async () => {
    const start = await yardContext(smallYard({ incoming: [{ material: 'mortar', quantity: 12, on: '2027-04-09' }] }));
    const { database } = start;
    const days = (n: number) => `2027-04-0${6 + n}T09:00:00Z`;
    const records = Array.from({ length: 20 }, (_, n) =>
      stripped(days(n % 2), n === 0 ? 'scrap' : n === 1 ? 'mend' : 'good'),
    );
    await database.write((tx) => addWorkRecords(tx, records));
    doneOf(await callOffWork({ ...start, now: '2027-04-10T06:00:00Z' }, '2027-04-10'));
    const [goods] = await database.read(onTheirWay);
    // Put off by its supplier: late all the same.
    await database.write((tx) => setExpected(tx, goods!.id, '2027-04-12'));
    doneOf(await receiveMaterial({ ...start, now: '2027-04-12T09:00:00Z' }, goods!.id, { text: '' }));
    const { get } = screensOn(database, '2027-04-13T06:00:00Z');
    const text = await textOf(await get('/yard/goes-wrong'));
    expect(text).toMatch(/^About 1 piece in 13 is not good, and 1 day of work in 9 is lost\./);
    expect(text).toContain('On record: 2 of 20 that came out: 1 scrap, 1 to mend, on top of a guess of 1 in 20.');
    expect(text).toContain('On record: 1 of 3 days with work called off that day or the day before');
    expect(text).toMatch(/900 no\. 1 1 in \d+ 2 of 20 that came out/);
    expect(text).toContain('1 of 1 came late, 3 days at most');
  });
});
