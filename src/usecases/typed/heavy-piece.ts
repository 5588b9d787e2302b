import type { UnitSystem } from '../../../shared/units.ts';
import { type Lifting, liftingOf } from '../../engine/kits/lifting.ts';
import { massText } from '../../engine/units/mass.ts';

export interface HeaviestPiece {
  name: string;
  mass: string;
  lifting: Lifting;
}

/** A piece by its mass in kg, with what that means for whoever lifts it. */
export const heavyPiece = (name: string, kg: number, system: UnitSystem): HeaviestPiece => ({
  ...{ name, mass: massText(kg, system), lifting: liftingOf(kg) },
});
