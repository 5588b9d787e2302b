import { incomingById, materialById, setExpected } from '../../../db/stores/material-store.ts';
import { todayIn } from '../../engine/book/today-in.ts';
import { done, refuse } from '../core/context.ts';
import { onDayWords } from '../core/day-words.ts';
import type { Edit } from '../plan/save-edit.ts';
import type { FormFields } from '../typed/form-fields.ts';
import { lastDay } from '../typed/last-day.ts';
import { changedMeanwhile, daysShown } from '../typed/meanwhile.ts';
import { measuresOf } from '../typed/measures.ts';
import { expectedTyped, goodsTyped } from '../typed/purchase-form.ts';

/** Goods on their way are expected on another day. */
export const moveDelivery = (fields: FormFields): Edit<{ name: string; day: string }> => ({
  what: { kind: 'delivery moved', words: ({ name, day }) => `${name} is expected ${day}` },
  work: async (tx, yard) => {
    const id = goodsTyped(fields);
    const goods = id.ok ? await incomingById(tx, id.value) : null;
    if (!goods || goods.arrivedOn !== null)
      return refuse('goods', 'That has arrived already, or is no longer on its way. Nothing was changed.');
    const [today, { system, english }] = [todayIn(yard), await measuresOf(tx)];
    const on = expectedTyped(fields, { today, last: lastDay(yard), system, english });
    if (!on.ok) return on;
    const faults = changedMeanwhile(
      { shown: daysShown(fields, ['on']), now: { on: goods.on }, typed: { on: on.value } },
      today,
    );
    if (faults.length > 0) return { ok: false, faults };
    await setExpected(tx, goods.id, on.value);
    const material = await materialById(tx, goods.material);
    return done({ name: material?.name ?? goods.material, day: onDayWords(on.value, today) });
  },
});
