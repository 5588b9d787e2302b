import { expect, test } from 'vitest';
import { addNotice, openNotices } from '../../../db/stores/change-store.ts';
import { countMaterial } from '../../../src/usecases/buying/count-material.ts';
import { dismissNotice } from '../../../src/usecases/changes/dismiss-notice.ts';
import { doneOf } from '../../support/outcomes.ts';
import { yardContext } from '../../support/yard-context.ts';

test('a notice that was read is put away, and the others stay', async () => {
  const context = await yardContext();
  const { change } = doneOf(await countMaterial(context, 'mortar', { text: '5' }));
  for (const words of ['one', 'two'])
    await context.database.write((tx) => addNotice(tx, { at: context.now, words, change }));
  const [shown] = await context.database.read(openNotices);
  await dismissNotice(context, shown!.id);
  const left = await context.database.read(openNotices);
  expect(left).toHaveLength(1);
  expect(left[0]?.id).not.toBe(shown!.id);
});
