import type { Tx } from '../../../db/open.ts';
import { rewriteCasting } from '../../../db/stores/casting-store.ts';
import { typedOf } from '../../../db/stores/figure-store.ts';
import { addMaterial, materialById, updateMaterial } from '../../../db/stores/material-store.ts';
import { type StockReason, setOffcuts, setOnHand, setRests } from '../../../db/stores/stock-store.ts';
import { materialBuyingsById, setMaterialBuying } from '../../../db/stores/supplier-store.ts';
import { isCutUp, type Material } from '../../../shared/material.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { done, type Outcome, refuse } from '../core/context.ts';
import { newId } from '../core/new-id.ts';
import type { Edit } from '../plan/save-edit.ts';
import { keepFigures, typedAnew } from '../typed/figures.ts';
import type { FormFields } from '../typed/form-fields.ts';
import { materialBuyingTyped, NO_BUYING } from '../typed/material-buying-form.ts';
import { type MaterialWriting, materialTexts, SHEET_FIGURES } from '../typed/material-figures.ts';
import { materialTyped, unitFault, withMaterial, withOwnLead } from '../typed/material-form.ts';
import { measuresOf } from '../typed/measures.ts';
import { onRecord, usesOf } from './uses-of.ts';

const KEPT_AS_TYPED = ['onHand', 'pack', 'minimum', 'stickMm', 'kerfMm', ...SHEET_FIGURES] as const;
const PLAIN = ['leadDays', 'unitPrice', 'shelfLifeDays', 'openedDays', 'opensBy'] as const;

const keep = async (
  tx: Tx,
  before: Material | null,
  after: Material,
  typed: FormFields,
  shown: FormFields,
): Promise<void> =>
  keepFigures(tx, { kind: 'material', id: after.id }, [
    ...KEPT_AS_TYPED.map((figure) => ({
      ...{ figure, before: before?.[figure], after: after[figure] },
      typed: typedAnew(typed, shown, figure),
    })),
    ...PLAIN.map((figure) => ({ figure, before: before?.[figure], after: after[figure] })),
  ]);

/** What work takes by its recipes is taken by them alone. */
const CONSUMED = 'Mixes, panels or kits say already how much of it is used. Leave this empty.';

/** What buying asks of it, and what is used up of it without a recipe. */
const keepBuying = async (
  tx: Tx,
  typed: FormFields,
  material: Material,
  { writing, uses }: { writing: Pick<MaterialWriting, 'system' | 'currency'>; uses: readonly string[] },
): Promise<Outcome<null>> => {
  const before = (await materialBuyingsById(tx)).get(material.id) ?? NO_BUYING;
  const read = materialBuyingTyped(typed, before, material, writing);
  if (!read.ok) return read;
  const { perTurn, perBatch } = read.value;
  const isRecipe = uses.some((use) => use.startsWith('goes into'));
  if (isRecipe && perTurn !== undefined) return refuse('perTurn', CONSUMED);
  if (isRecipe && perBatch !== undefined) return refuse('perBatch', CONSUMED);
  await setMaterialBuying(tx, material.id, read.value);
  return done(null);
};

/** Something that is bought and used up. */
export const addToStockBook = (typed: FormFields): Edit<string> => ({
  what: { kind: 'material added', words: (name) => `${name} added to the stock book` },
  work: async (tx, yard) => {
    const id = newId(typed.name ?? '', new Set(yard.materials.map((one) => one.id)));
    const read = materialTyped(typed, null, id, { ...(await measuresOf(tx)), typed: {} });
    if (!read.ok) return read;
    const then = withMaterial(yard, read.value);
    if (!then.ok) return then;
    await addMaterial(tx, read.value, yard.yard.now);
    const buying = await keepBuying(tx, typed, read.value, { writing: await measuresOf(tx), uses: [] });
    if (!buying.ok) return buying;
    await keep(tx, null, read.value, typed, {});
    return done(read.value.name);
  },
});

/** As the form shows it: with its own days to come, also where it is not to be had before a day. */
const ownMaterial = async (tx: Tx, { materials }: YardFile, id: string): Promise<Material | null> => {
  const [material, stored] = [materials.find((one) => one.id === id), await materialById(tx, id)];
  return material && stored ? withOwnLead(material, stored.leadDays) : null;
};

/** What the database holds of a material: what a yard file leaves out is empty there. */
const rowOf = ({ id: _id, onHand: _there, offcuts: _offcuts, rests: _rests, lots: _lots, ...facts }: Material) => ({
  ...{ leadDays: null, unitPrice: null, supplier: null, shelfLifeDays: null, stickMm: null },
  ...{ opensBy: null, openedDays: null },
  ...{ sheetWidthMm: null, sheetLengthMm: null, meshMm: null, inSheets: null },
  ...facts,
});

/** How much there is, set right by the form. Counted in another unit, the book ends in the one and begins in the other. */
const correct = async (tx: Tx, before: Material, after: Material, at: string): Promise<void> => {
  const why: StockReason = { kind: 'corrected', at };
  if (before.unit !== after.unit)
    await setOnHand(tx, after.id, 0, { ...why, reason: `Counted in ${before.unit} until then` });
  // What is cut has no bag dates.
  else if (isCutUp(after) && before.lots) await setOnHand(tx, after.id, 0, { ...why, reason: 'Cut up from then on' });
  await setOnHand(tx, after.id, after.onHand, why);
  await setOffcuts(tx, after.id, after.offcuts ?? [], why);
  await setRests(tx, after.id, after.rests ?? [], why);
};

/**
 * From then on what panels say of its sheets is what plans count: how much each takes of it by its unit goes, where it says how
 * large its piece is.
 */
const countedInSheets = (yard: YardFile, id: string): YardFile => ({
  ...yard,
  castings: yard.castings.map((casting) =>
    casting.sheets?.some(({ material }) => material === id)
      ? { ...casting, perPiece: casting.perPiece.filter(({ material }) => material !== id) }
      : casting,
  ),
});

/** Panels that take of it by its unit and do not say how large a piece; they would take whole sheets. */
const takenByUnit = ({ castings, mixes, kits }: YardFile, id: string): string[] => {
  const takes = (list: readonly { material: string }[]) => list.some(({ material }) => material === id);
  return [
    ...castings.filter(({ perPiece }) => takes(perPiece)),
    ...mixes.filter(({ perBag }) => takes(perBag)),
    ...kits.filter(({ parts }) => takes(parts)),
  ].map(({ name }) => name);
};

const sheetsFault = (yard: YardFile, before: Material, after: Material): string | null => {
  const [first] = after.inSheets && !before.inSheets ? takenByUnit(yard, after.id) : [];
  return first ? `${first} takes ${before.unit} of it. Say there first how large its piece of a sheet is.` : null;
};

/** What a material is called, how much there is of it, and how it is bought. */
export const editMaterial = (id: string, typed: FormFields): Edit<string> => ({
  what: { kind: 'material set', words: (name) => `${name} changed` },
  work: async (tx, held) => {
    const before = await ownMaterial(tx, held, id);
    if (!before) return refuse('name', 'It is not in the stock book any more.');
    const writing = { ...(await measuresOf(tx)), typed: await typedOf(tx, { kind: 'material', id }) };
    const read = materialTyped(typed, before, id, writing);
    if (!read.ok) return read;
    const yard = read.value.inSheets ? countedInSheets(held, id) : held;
    const uses = usesOf(yard, await onRecord(tx), 'material', id);
    const sheets = sheetsFault(yard, before, read.value);
    if (sheets) return refuse('inSheets', sheets);
    const unit = read.value.inSheets ? null : unitFault(before, read.value, uses);
    if (unit) return refuse('unit', unit);
    const then = withMaterial(yard, read.value);
    if (!then.ok) return then;
    await updateMaterial(tx, id, rowOf(read.value));
    for (const [place, casting] of yard.castings.entries())
      if (casting !== held.castings[place]) await rewriteCasting(tx, casting);
    await correct(tx, before, read.value, yard.yard.now);
    const buying = await keepBuying(tx, typed, read.value, { writing, uses });
    if (!buying.ok) return buying;
    await keep(tx, before, read.value, typed, materialTexts(before, writing));
    return done(read.value.name);
  },
});
