import type { Tx } from '../../../db/open.ts';
import { typedForFigure } from '../../../db/stores/figure-store.ts';
import { watersOfMixes } from '../../../db/stores/mix-water-store.ts';
import { unitsOfYard } from '../../../db/stores/units-store.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import { readVolume } from '../../engine/units/volume.ts';

/** Water for a bag: an amount, or a note that is none ("until it flows"). */
export interface MixWater {
  litres: number | null;
  note: string | null;
}

/** The water of a mix. Words that were written down before amounts were kept are read; what is no amount is a note. */
export const waterOf = (litres: number | undefined, words: string | undefined, system: UnitSystem): MixWater => {
  if (litres !== undefined) return { litres, note: null };
  if (words === undefined) return { litres: null, note: null };
  const read = readVolume(words, system);
  return read.ok && read.value > 0 ? { litres: read.value, note: null } : { litres: null, note: words };
};

export type Waters = ReadonlyMap<string, MixWater>;

/** By mix, of those for which there is any. */
export const watersOfYard = async (tx: Tx): Promise<Waters> => {
  const [litres, system] = [await watersOfMixes(tx), await unitsOfYard(tx)];
  const words = await typedForFigure(tx, { kind: 'mix', figure: 'water' });
  const mixes = new Set([...litres.keys(), ...words.keys()]);
  return new Map([...mixes].map((mix) => [mix, waterOf(litres.get(mix), words.get(mix), system)]));
};
