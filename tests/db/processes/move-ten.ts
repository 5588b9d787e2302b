/** Run as a process of its own until it is killed: moves ten from one material to another in two writes, for ever. */
import { openDatabase } from '../../../db/open.ts';
import { moreOf } from '../../support/stock-set.ts';

const [url = ''] = process.argv.slice(2);
const database = await openDatabase({ url });
for (let turn = 0; ; turn += 1) {
  const [from, to] = turn % 2 === 0 ? ['mortar', 'rod'] : ['rod', 'mortar'];
  await database.write(async (tx) => {
    await moreOf(tx, from as string, -10);
    await moreOf(tx, to as string, 10);
  });
  if (turn === 20) process.stdout.write('moving\n');
}
