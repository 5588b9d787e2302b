import { isCutUp, type Material } from '../../../shared/material.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { withBags } from '../../engine/book/stock-lots.ts';
import { readAmount, shownUnit } from '../../engine/units/material-unit.ts';
import type { Outcome } from '../core/context.ts';
import { stockAmount } from './amount-typed.ts';
import { type FieldWords, fitsYardFile, sayAt } from './fits-yard-file.ts';
import type { FormFields } from './form-fields.ts';
import { IN_SHEETS, type MaterialWriting, materialTexts, readMm, SHEET_FIGURES } from './material-figures.ts';
import { moneyTyped } from './money-typed.ts';
import { offcutsTyped } from './offcuts-typed.ts';
import { ShownReader } from './shown-reader.ts';
import { sizesTyped } from './sizes-typed.ts';

const LONGEST_WAIT_DAYS = 3650;

/** Where a share of a stick is typed. */
export const WHOLE_ONES = 'Write whole ones. What is left of an opened one stands under Offcuts.';

/** The same of sheets. */
export const WHOLE_SHEETS = 'Write whole ones. What is left of an opened one stands under Rests.';

/** What one costs, by the price of a pack; undefined where nobody said. */
const priceTyped = (
  reader: ShownReader<Material>,
  before: Material | null,
  pack: number,
  currency: string,
): number | undefined => {
  if (before && before.pack === pack && reader.asShown('packPrice')) return before.unitPrice;
  const price = moneyTyped(reader.text('packPrice'), currency);
  if (!price.ok) reader.refuse('packPrice', price.reason);
  if (!price.ok || price.value === null || pack <= 0) return undefined;
  return Number((price.value / pack).toPrecision(15));
};

/** What is left of opened ones; undefined where there are none, or it is not cut. */
const restsTyped = (
  reader: ShownReader<Material>,
  before: Material | null,
  stickMm: number | undefined,
  system: MaterialWriting['system'],
): Material['offcuts'] => {
  const there = before?.offcuts ?? [];
  if (stickMm === undefined) return undefined;
  const offcuts = offcutsTyped(reader.text('offcuts'), { system, before: there, stickMm });
  if (!offcuts.ok) reader.refuse('offcuts', offcuts.reason);
  return offcuts.ok && offcuts.value.length > 0 ? offcuts.value : undefined;
};

/** A material with its own days to come: in a yard file it takes longer while it is not to be had. */
export const withOwnLead = ({ leadDays: _days, ...material }: Material, own: number | null): Material => ({
  ...material,
  ...(own === null ? {} : { leadDays: own }),
});

/** The bags with a date once so much is there: what is less is of those that go first, what is more of no known date. */
const lotsThen = (before: Material, onHand: number): Material['lots'] =>
  withBags(before, { quantity: onHand - before.onHand }).lots;

/** A sheet has both sizes, and is no stick; only what comes as sheets has openings and rests. */
const fitsTogether = (reader: ShownReader<Material>): void => {
  const has = (name: string) => reader.text(name) !== '';
  const [wide, long] = [has('sheetWidthMm'), has('sheetLengthMm')];
  if (wide && !long) reader.refuse('sheetLengthMm', 'How long is a sheet, or a roll?');
  if (!wide && (long || has('meshMm') || has('rests')))
    reader.refuse('sheetWidthMm', 'How wide is a sheet, or a roll?');
  if (wide && long && has('stickMm')) reader.refuse('stickMm', 'It is sold as lengths or as sheets, not as both.');
};

/** Whether plans count whole sheets; such a one is not weighed or measured. */
const inSheetsTyped = (reader: ShownReader<Material>): true | undefined => {
  if (reader.text('inSheets') !== IN_SHEETS) return undefined;
  if (reader.text('sheetWidthMm') === '') reader.refuse('sheetWidthMm', 'How wide is a sheet, or a roll?');
  if (isMeasured(reader.text('unit'))) reader.refuse('unit', 'Plans count whole ones then: write sheet, or roll.');
  return true;
};

/** What is left of opened sheets; undefined where there is none. */
const sheetRestsTyped = (
  reader: ShownReader<Material>,
  before: Material | null,
  system: MaterialWriting['system'],
): Material['rests'] => {
  if (before && reader.asShown('rests')) return before.rests;
  const rests = sizesTyped(reader.text('rests'), system);
  if (!rests.ok) reader.refuse('rests', rests.reason);
  return rests.ok && rests.value.length > 0 ? rests.value : undefined;
};

/** True where amounts in this unit are weighed or measured, and so are typed in other units too. */
const isMeasured = (unit: string): boolean => shownUnit(unit, 'US').word !== shownUnit(unit, 'metric').word;

/** A material as it was typed; `before` is what it was. */
export const materialTyped = (
  typed: FormFields,
  before: Material | null,
  id: string,
  writing: MaterialWriting,
): Outcome<Material> => {
  const { system, currency } = writing;
  const unit = typed.unit ?? '';
  const sameUnit = before !== null && before.unit === unit;
  const reader = new ShownReader<Material>(typed, before, before && materialTexts(before, writing));
  const amount = (name: 'onHand' | 'pack' | 'minimum', none: number): number => {
    const next = () => reader.measure(name, (text) => stockAmount(text, unit, system));
    if (before === null || sameUnit) return reader.figureOr(name, none, next);
    return reader.text(name) === '' ? none : next();
  };
  const days = (name: 'leadDays' | 'shelfLifeDays' | 'openedDays') =>
    reader.figureOr(name, undefined, () => reader.whole(name, 'How many days?', { most: LONGEST_WAIT_DAYS }));
  const length = (name: 'stickMm' | 'kerfMm' | (typeof SHEET_FIGURES)[number]) => () =>
    reader.measure(name, (text) => readMm(text, system));
  const pack = amount('pack', 1);
  const stickMm = reader.figureOr('stickMm', undefined, length('stickMm'));
  const onHand = amount('onHand', 0);
  const inSheets = inSheetsTyped(reader);
  const isCut = isCutUp({ stickMm, inSheets });
  if (isCut && !Number.isInteger(onHand) && !(sameUnit && reader.asShown('onHand')))
    reader.refuse('onHand', inSheets ? WHOLE_SHEETS : WHOLE_ONES);
  fitsTogether(reader);
  const facts = {
    id,
    name: reader.words('name', 'What is it called?'),
    unit: reader.words('unit', 'What is it counted in? Bags, kg, pieces.'),
    ...{ onHand, pack, minimum: amount('minimum', 0) },
    ...{ leadDays: days('leadDays'), shelfLifeDays: days('shelfLifeDays'), openedDays: days('openedDays') },
    opensBy: reader.figureOr('opensBy', undefined, () =>
      reader.measure('opensBy', (text) => readAmount(text, unit, system)),
    ),
    lots: !isCut && sameUnit ? lotsThen(before, onHand) : undefined,
    unitPrice: priceTyped(reader, before, pack, currency),
    supplier: reader.text('supplier') || undefined,
    stickMm,
    offcuts: restsTyped(reader, before, stickMm, system),
    kerfMm: reader.figureOr('kerfMm', 0, length('kerfMm')) ?? 0,
    ...Object.fromEntries(SHEET_FIGURES.map((name) => [name, reader.figureOr(name, undefined, length(name))])),
    rests: sheetRestsTyped(reader, before, system),
    inSheets,
  };
  const present = Object.fromEntries(Object.entries(facts).filter(([, value]) => value !== undefined));
  return reader.outcome(present as unknown as Material);
};

/** Another unit leaves the numbers in mixes and kits as they are: 700 g would be 700 kg. */
export const unitFault = (before: Material, after: Material, uses: readonly string[]): string | null =>
  before.unit !== after.unit && uses.length > 0 && (isMeasured(before.unit) || isMeasured(after.unit))
    ? `It stays counted in ${before.unit}, because it ${uses.join(' and ')} by that.`
    : null;

const WORDS: FieldWords = {
  'castings[].sheets[].material': sayAt('sheetWidthMm', 'Panels need pieces of its sheets. How wide is one?'),
  'castings[].sheets[]': sayAt('sheetWidthMm', 'A panel needs a larger piece than that, cut from it.'),
  'castings[].perPiece[].material': sayAt(
    'inSheets',
    'Panels take some of it by its unit as well: take that out there.',
  ),
  'castings[].cuts[].material': sayAt('stickMm', 'Panels need pieces that are cut from it. How long is one?'),
  'kits[].cuts[].material': sayAt('stickMm', 'Kits need pieces that are cut from it. How long is one?'),
  'castings[].cuts[].lengthMm': sayAt('stickMm', 'A panel needs a longer piece than that, cut from it.'),
  'kits[].cuts[].lengthMm': sayAt('stickMm', 'A kit needs a longer piece than that, cut from it.'),
};

/** The yard with a material put in its place, or last. */
export const withMaterial = (yard: YardFile, material: Material): Outcome<YardFile> => {
  const found = yard.materials.findIndex(({ id }) => id === material.id);
  const place = found < 0 ? yard.materials.length : found;
  const materials = [...yard.materials];
  materials[place] = material;
  return fitsYardFile({ ...yard, materials }, `materials[${place}]`, WORDS);
};
