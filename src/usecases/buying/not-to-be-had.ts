import { materialById } from '../../../db/stores/material-store.ts';
import { materialBuyingsById, setMaterialBuying } from '../../../db/stores/supplier-store.ts';
import { dayWords } from '../../../shared/day-words.ts';
import { todayIn } from '../../engine/book/today-in.ts';
import { done, type Outcome, refuse } from '../core/context.ts';
import type { Edit } from '../plan/save-edit.ts';
import type { FormFields } from '../typed/form-fields.ts';
import { lastDay } from '../typed/last-day.ts';
import { NO_BUYING } from '../typed/material-buying-form.ts';
import { measuresOf } from '../typed/measures.ts';
import { expectedTyped } from '../typed/purchase-form.ts';

interface NotHad {
  name: string;
  /** The day from which it is to be had; null from now on. */
  from: string | null;
}

/** A material is not to be had before a day, and everything is planned without it; with no day it is to be had again. */
export const notToBeHad = (fields: FormFields): Edit<NotHad> => ({
  what: {
    kind: 'not to be had',
    words: ({ name, from }) =>
      from === null ? `${name} is to be had again` : `${name} is not to be had before ${dayWords(from)}`,
  },
  work: async (tx, yard): Promise<Outcome<NotHad>> => {
    const material = await materialById(tx, fields.material ?? '');
    if (!material) return refuse('material', 'That material is not in the stock book.');
    const { notBefore: _before, ...facts } = (await materialBuyingsById(tx)).get(material.id) ?? NO_BUYING;
    if ((fields.on ?? '') === '') {
      await setMaterialBuying(tx, material.id, facts);
      return done({ name: material.name, from: null });
    }
    const { system, english } = await measuresOf(tx);
    const from = expectedTyped(fields, { today: todayIn(yard), last: lastDay(yard), system, english });
    if (!from.ok) return from;
    await setMaterialBuying(tx, material.id, { ...facts, notBefore: from.value });
    return done({ name: material.name, from: from.value });
  },
});
