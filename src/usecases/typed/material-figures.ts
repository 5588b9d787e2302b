import type { Material } from '../../../shared/material.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import { minorDigits } from '../../engine/cost/minor-units.ts';
import { lengthText, readLength } from '../../engine/units/length.ts';
import { read } from '../../engine/units/reading.ts';
import { amountField, asTyped } from './amount-typed.ts';
import { figureShown } from './figures.ts';
import { offcutsText } from './offcuts-typed.ts';
import { sizesText } from './sizes-typed.ts';

/** The size of a sheet, and of the openings of a mesh. */
export const SHEET_FIGURES = ['sheetWidthMm', 'sheetLengthMm', 'meshMm'] as const;

/** What the field says where plans count whole sheets. */
export const IN_SHEETS = 'sheets';

export type MaterialTexts = Readonly<Record<string, string>>;

/** How a material's figures are written, and what was typed for them. */
export interface MaterialWriting {
  system: UnitSystem;
  currency: string;
  typed: Readonly<Record<string, string>>;
}

export const readMm = (text: string, system: UnitSystem) => {
  const length = readLength(text, system);
  return length.ok ? read(length.value.mm) : length;
};

/** What each field of a material's form shows. A field that comes back like this is the figure it was, to the last bit. */
export const materialTexts = (material: Material, { system, currency, typed }: MaterialWriting): MaterialTexts => {
  const amount = (figure: 'onHand' | 'pack' | 'minimum') =>
    asTyped(typed[figure], material[figure], material.unit, system) ??
    amountField(material[figure], material.unit, system);
  const length = (figure: 'stickMm' | 'kerfMm' | (typeof SHEET_FIGURES)[number], mm: number | undefined) =>
    mm === undefined
      ? ''
      : figureShown(
          typed[figure],
          mm,
          (text) => readMm(text, system),
          (stored) => lengthText(stored, system),
        );
  const { unitPrice, stickMm, kerfMm, offcuts } = material;
  return {
    ...{ name: material.name, unit: material.unit, supplier: material.supplier ?? '' },
    ...{ onHand: amount('onHand'), pack: amount('pack'), minimum: amount('minimum') },
    leadDays: String(material.leadDays ?? ''),
    shelfLifeDays: String(material.shelfLifeDays ?? ''),
    openedDays: String(material.openedDays ?? ''),
    opensBy: material.opensBy === undefined ? '' : amountField(material.opensBy, material.unit, system),
    // Of a pack: what is sold by 500 g costs less than the smallest coin a gram.
    packPrice: unitPrice === undefined ? '' : (unitPrice * material.pack).toFixed(minorDigits(currency)),
    stickMm: length('stickMm', stickMm),
    offcuts: offcutsText(offcuts ?? [], system),
    ...Object.fromEntries(SHEET_FIGURES.map((figure) => [figure, length(figure, material[figure])])),
    rests: sizesText(material.rests ?? [], system),
    inSheets: material.inSheets ? IN_SHEETS : '',
    kerfMm: stickMm === undefined && kerfMm === 0 ? '' : length('kerfMm', kerfMm),
  };
};
