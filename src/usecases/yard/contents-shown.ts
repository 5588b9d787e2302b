import type { Casting } from '../../../shared/casting.ts';
import type { Material } from '../../../shared/material.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import { lengthText, sizeText } from '../../engine/units/length.ts';
import type { Counted } from '../core/page-parts.ts';
import { shownAmount } from '../typed/measures.ts';

/** What goes into a piece or a kit beside what is cast, in the units that are shown. */
export interface ContentsShown {
  parts: readonly { name: string; quantity: number; unit: string }[];
  /** Of sticks by their length, of sheets by width and length. */
  cuts: readonly (Counted & { length: string })[];
}

/** Materials by their names, amounts as the yard shows them, lengths in its units. */
export const contentsShown = (
  parts: Casting['perPiece'],
  cuts: Casting['cuts'],
  { materials, system }: { materials: readonly Material[]; system: UnitSystem },
  sheets: NonNullable<Casting['sheets']> = [],
): ContentsShown => {
  const named = new Map(materials.map((one) => [one.id, one]));
  const cutFrom = (id: string, count: number, length: string) => ({ name: named.get(id)?.name ?? id, length, count });
  return {
    parts: parts.map(({ material: id, quantity }) => ({
      name: named.get(id)?.name ?? id,
      ...shownAmount({ quantity, unit: named.get(id)?.unit ?? '' }, system),
    })),
    cuts: [
      ...cuts.map(({ material, lengthMm, count }) => cutFrom(material, count, lengthText(lengthMm, system))),
      ...sheets.map(({ material, count, ...size }) => cutFrom(material, count, sizeText(size, system))),
    ],
  };
};
