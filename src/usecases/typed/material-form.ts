import type { Material } from '../../../shared/material.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { withBags } from '../../engine/book/stock-lots.ts';
import { readAmount, shownUnit } from '../../engine/units/material-unit.ts';
import type { Outcome } from '../core/context.ts';
import { type FieldWords, fitsYardFile, sayAt } from './fits-yard-file.ts';
import type { FormFields } from './form-fields.ts';
import { type MaterialWriting, materialTexts, readMm } from './material-figures.ts';
import { moneyTyped } from './money-typed.ts';
import { offcutsTyped } from './offcuts-typed.ts';
import { ShownReader } from './shown-reader.ts';

const LONGEST_WAIT_DAYS = 3650;

/** Where a share of a stick is typed. */
export const WHOLE_ONES = 'Write whole ones. What is left of an opened one stands under Offcuts.';

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
    const next = () => reader.measure(name, (text) => readAmount(text, unit, system));
    if (before === null || sameUnit) return reader.figureOr(name, none, next);
    return reader.text(name) === '' ? none : next();
  };
  const days = (name: 'leadDays' | 'shelfLifeDays' | 'openedDays') =>
    reader.figureOr(name, undefined, () => reader.whole(name, 'How many days?', { most: LONGEST_WAIT_DAYS }));
  const length = (name: 'stickMm' | 'kerfMm') => () => reader.measure(name, (text) => readMm(text, system));
  const pack = amount('pack', 1);
  const stickMm = reader.figureOr('stickMm', undefined, length('stickMm'));
  const onHand = amount('onHand', 0);
  if (stickMm !== undefined && !Number.isInteger(onHand) && !(sameUnit && reader.asShown('onHand')))
    reader.refuse('onHand', WHOLE_ONES);
  const facts = {
    id,
    name: reader.words('name', 'What is it called?'),
    unit: reader.words('unit', 'What is it counted in? Bags, kg, pieces.', 20),
    ...{ onHand, pack, minimum: amount('minimum', 0) },
    ...{ leadDays: days('leadDays'), shelfLifeDays: days('shelfLifeDays'), openedDays: days('openedDays') },
    opensBy: reader.figureOr('opensBy', undefined, () =>
      reader.measure('opensBy', (text) => readAmount(text, unit, system)),
    ),
    lots: stickMm === undefined && sameUnit ? lotsThen(before, onHand) : undefined,
    unitPrice: priceTyped(reader, before, pack, currency),
    supplier: reader.text('supplier') || undefined,
    stickMm,
    offcuts: restsTyped(reader, before, stickMm, system),
    kerfMm: reader.figureOr('kerfMm', 0, length('kerfMm')) ?? 0,
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
