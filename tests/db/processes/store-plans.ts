/** Run as a process of its own until it is killed: stores one of two large plans after the other, each with its revision. */
import { openDatabase } from '../../../db/open.ts';
import { savePlan } from '../../../db/stores/plan-store.ts';
import { bumpRevision } from '../../../db/stores/yard-store.ts';
import { largePlans } from '../../support/large-plans.ts';

const [url = ''] = process.argv.slice(2);
const database = await openDatabase({ url });
const plans = largePlans();
for (let turn = 0; ; turn += 1) {
  await database.write(async (tx) => {
    const revision = await bumpRevision(tx);
    const plan = plans[revision % 2]!;
    const at = { madeAt: 'then', now: 'then', goodFromMinute: 0, goodUntilMinute: 1 };
    await savePlan(tx, {
      ...at,
      revision,
      plan,
      memory: null,
      unanswered: null,
      improved: false,
      anew: null,
      searchedUntilMinute: null,
    });
  });
  if (turn === 2) process.stdout.write('storing\n');
}
