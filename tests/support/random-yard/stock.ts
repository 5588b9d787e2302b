import { dateOfDay } from '../../../shared/time.ts';
import type { YardFileInput } from '../../../shared/yard-file.ts';
import type { Dice } from './dice.ts';
import type { Place } from './hours.ts';

type Material = YardFileInput['materials'][number];
export type StockPart = Pick<YardFileInput, 'materials' | 'incoming'>;

interface Kind {
  id: string;
  unit: string;
  /** About what one piece takes. */
  perPiece: number;
  packs: number[];
  stickMm?: number[];
}

const KINDS: Kind[] = [
  { id: 'fast-setting-mortar', unit: 'bag', perPiece: 0.5, packs: [1, 1, 5] },
  { id: 'ordinary-mix', unit: 'bag', perPiece: 0.5, packs: [1, 10] },
  { id: 'white-cement', unit: 'bag', perPiece: 0.25, packs: [1] },
  { id: 'sand', unit: 'kg', perPiece: 9, packs: [25, 0.5] },
  { id: 'plasticiser', unit: 'each', perPiece: 0.5, packs: [10, 1] },
  { id: 'fibre', unit: 'g', perPiece: 5, packs: [500, 250] },
  { id: 'mesh', unit: 'm2', perPiece: 0.12, packs: [6, 2.5] },
  { id: 'sleeve-pipe', unit: 'stick', perPiece: 0.15, packs: [1, 4], stickMm: [3000, 2000] },
  { id: 'pin-rod', unit: 'stick', perPiece: 0.1, packs: [1, 1, 3], stickMm: [3000, 6000] },
  { id: 'lid', unit: 'each', perPiece: 0.1, packs: [1, 2] },
];

/** One material in a hundred pieces' worth of trouble: plenty, some, or none there; quick, slow or not to be bought. */
const materialOf = (dice: Dice, kind: Kind, pieces: number): Material => {
  const wholeUnits = kind.packs.every(Number.isInteger);
  const wanted = kind.perPiece * pieces;
  const amount = (share: number) => (wholeUnits ? Math.ceil(wanted * share) : Math.round(wanted * share * 100) / 100);
  const scarce = dice.chance(0.08);
  const leadDays = scarce ? undefined : dice.pick([0, 1, 2, 3, 5, 7, 14]);
  const onHand = amount(scarce ? dice.pick([0.4, 0.8, 1.5]) : dice.pick([0, 0.1, 0.4, 1, 3]));
  const minimum = dice.chance(0.3) ? dice.pick([1, 2, 0.5]) * (wanted > 50 ? 10 : 1) : 0;
  return {
    id: kind.id,
    name: `${kind.id.replace('-', ' ')}, by the ${kind.unit}`,
    unit: kind.unit,
    onHand,
    pack: dice.pick(kind.packs),
    ...(leadDays === undefined ? {} : { leadDays }),
    minimum,
    ...(kind.stickMm ? { stickMm: dice.pick(kind.stickMm), kerfMm: dice.pick([0, 1, 2, 3]) } : {}),
  };
};

/**
 * Now and then rests of opened sticks lie about, with few whole ones or none beside them, and a share of one that counts
 * for nothing. By dice of its own, so that all else of a seed's yard stays what it was.
 */
export const withOffcuts = (dice: Dice, materials: readonly Material[]): Material[] =>
  materials.map((material) => {
    const { stickMm } = material;
    if (stickMm === undefined || !dice.chance(0.4)) return material;
    const counts = new Map<number, number>();
    for (let n = dice.whole(1, 4); n > 0; n--)
      counts.set(dice.pick([190, 192, 480, 700, dice.whole(200, stickMm)]), dice.pick([1, 1, 1, 2, 5]));
    const offcuts = [...counts].sort(([a], [b]) => b - a).map(([lengthMm, count]) => ({ lengthMm, count }));
    // What can be bought this very day would have to have been above the minimum since midnight: see materialOf.
    const asked = material.leadDays === 0 ? { minimum: 0 } : {};
    const few = dice.chance(0.5) ? { onHand: dice.pick([0, 0, 1, 2]) + dice.pick([0, 0, 0.4]), ...asked } : {};
    const late = dice.chance(0.3) ? { leadDays: dice.pick([14, 28]) } : {};
    return { ...material, ...few, ...late, offcuts };
  });

/** Materials for about so many pieces, and what is on its way: some of it was due before today. */
export const stockOf = (dice: Dice, place: Place, pieces: number): StockPart => {
  const materials = KINDS.map((kind) => materialOf(dice, kind, pieces));
  const incoming = dice.some(KINDS, dice.whole(0, 3)).map((kind) => ({
    material: kind.id,
    quantity: Math.max(1, Math.round(kind.perPiece * pieces * dice.pick([0.1, 0.3, 0.6]))),
    on: dateOfDay(place.today + dice.whole(-2, 25)),
  }));
  return { materials, incoming };
};
