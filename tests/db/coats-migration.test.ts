import { expect, test } from 'vitest';
import { storedPlan } from '../../db/stores/plan-store.ts';
import { databaseBefore } from '../support/database-before.ts';
import { handPlan } from '../support/planned-yard.ts';
import { temporaryDatabase } from '../support/temporary-database.ts';

/** The plan by hand as plans were: the set-up of no. 2 has its coat in it, and no list has coats. */
const coatedPlan = (): string => {
  const { coats: _coats, pours, ...plan } = handPlan();
  return JSON.stringify({ ...plan, version: 1, pours: pours.map((pour, i) => ({ ...pour, oiled: i === 1 })) });
};

test('a plan whose set-ups held coats can be read, and is good no more', async () => {
  const head = {
    sql: 'insert into plans (id, revision, madeAt, now, goodFromMinute, goodUntilMinute) values (?, ?, ?, ?, ?, ?)',
  };
  const url = await databaseBefore('dryFrom', [
    { ...head, args: [1, 7, '2027-04-08T09:00:00Z', '2027-04-08T09:00:00Z', 100, 200] },
    { sql: 'insert into planPieces (place, piece) values (?, ?)', args: [0, coatedPlan()] },
  ]);
  const database = await temporaryDatabase(url);
  const stored = await database.read(storedPlan);
  expect(stored?.plan).toEqual({ ...handPlan(), coats: [] });
  expect([stored?.goodFromMinute, stored?.goodUntilMinute]).toEqual([100, 100]);
});
