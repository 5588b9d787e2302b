/** Run as a process of its own: reads a number from the database, adds one and writes it back, again and again. */
import { openDatabase } from '../../../db/open.ts';
import { materialById } from '../../../db/stores/material-store.ts';
import { countedNow } from '../../support/stock-set.ts';

const [url = '', times = '0', token] = process.argv.slice(2);
const database = await openDatabase({ url, ...(token === undefined ? {} : { token }) });
for (let done = 0; done < Number(times); done += 1)
  await database.write(async (tx) => {
    const mortar = await materialById(tx, 'mortar');
    await countedNow(tx, 'mortar', (mortar?.onHand ?? Number.NaN) + 1);
  });
await database.close();
