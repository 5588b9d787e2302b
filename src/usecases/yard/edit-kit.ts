import { typedOf } from '../../../db/stores/figure-store.ts';
import { addKit, rewriteKit } from '../../../db/stores/kit-store.ts';
import type { Kit } from '../../../shared/kit.ts';
import { done, refuse } from '../core/context.ts';
import { newId } from '../core/new-id.ts';
import type { Edit } from '../plan/save-edit.ts';
import type { FormFields } from '../typed/form-fields.ts';
import { kitTexts, kitTyped, withKit } from '../typed/kit-form.ts';
import { measuresOf } from '../typed/measures.ts';
import { keepContents } from './keep-contents.ts';

/** Something that is sold as one. */
export const addOneKit = (typed: FormFields): Edit<string> => ({
  what: { kind: 'kit added', words: (name) => `${name} added to the kits` },
  work: async (tx, yard) => {
    const id = newId(typed.name ?? '', new Set(yard.kits.map((one) => one.id)));
    const writing = { ...(await measuresOf(tx)), materials: yard.materials, typed: {} };
    const read = kitTyped(typed, id, null, yard, writing);
    if (!read.ok) return read;
    const then = withKit(yard, read.value, typed);
    if (!then.ok) return then;
    await addKit(tx, read.value);
    await keepContents(tx, { kind: 'kit', id }, typed);
    return done(read.value.name);
  },
});

const isSame = (a: Kit, b: Kit): boolean => JSON.stringify([a.pieces, a.cuts]) === JSON.stringify([b.pieces, b.cuts]);

/** What a kit is called, what is in it, and how long it takes to pack. */
export const editKit = (id: string, typed: FormFields): Edit<string> => ({
  what: { kind: 'kit set', words: (name) => `${name} changed` },
  work: async (tx, yard) => {
    const before = yard.kits.find((one) => one.id === id);
    if (!before) return refuse('name', 'This kit is not there any more.');
    const kept = await typedOf(tx, { kind: 'kit', id });
    const writing = { ...(await measuresOf(tx)), materials: yard.materials, typed: kept };
    const read = kitTyped(typed, id, before, yard, writing);
    if (!read.ok) return read;
    const then = withKit(yard, read.value, typed);
    if (!then.ok) return then;
    await rewriteKit(tx, read.value, isSame(before, read.value));
    await keepContents(tx, { kind: 'kit', id }, typed, { shown: kitTexts(before, writing), typed: kept });
    return done(read.value.name);
  },
});
