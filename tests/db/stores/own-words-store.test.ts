import { expect, test } from 'vitest';
import { ownWordsOfYard } from '../../../db/stores/own-words-store.ts';
import { withDemo } from '../../support/screens.ts';
import { databaseFilled } from '../../support/temporary-database.ts';

test('names and notes are words of the yard; keys, states, days and clocks are none', async () => {
  const database = await databaseFilled(withDemo);
  const own = await database.read(ownWordsOfYard);
  expect(own).toEqual(
    expect.arrayContaining([
      'School garden',
      'Glass fibre, chopped',
      'Gate is locked until 8.45.',
      "Builders' merchant",
    ]),
  );
  for (const word of ['cancelled', 'handed over', 'plasticiser', 'glass-fibre', '08:00', '2027-04-10'])
    expect(own).not.toContain(word);
});
