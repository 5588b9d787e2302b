import { z } from 'zod';
import { wholePositive } from './number.ts';
import { typedLength } from './units.ts';

/** What a kit stands round: four sides, six with a corner left out, or one straight row. */
export const KIT_SHAPES = ['rectangle', 'L', 'row'] as const;
const kitShape = z.enum(KIT_SHAPES);
/** One of `KIT_SHAPES`: which of the lengths of a size are asked for hangs on it. */
export type KitShape = z.infer<typeof kitShape>;

/** Which faces of the panels a size is measured between. */
export const FACES = ['outside', 'inside'] as const;
const faces = z.enum(FACES);
/** One of `FACES`: an inside size is two thicknesses of a panel less than the outside one, where two corners meet. */
export type Faces = z.infer<typeof faces>;

/**
 * A kit as it was asked for by its size, each length as it was typed and in mm. Which lengths a shape needs is checked
 * where it is typed, not here.
 */
export const kitSize = z.strictObject({
  shape: kitShape,
  faces,
  length: typedLength,
  /** Of a rectangle or an L. */
  width: typedLength.optional(),
  /** Of the corner that an L leaves out. */
  cutLength: typedLength.optional(),
  cutWidth: typedLength.optional(),
  courses: wholePositive,
  /** How far the pins go into the ground. */
  ground: typedLength,
});
/** A size once read. What it comes to in panels is worked out by `kitBySize`, and never stored here. */
export type KitSize = z.infer<typeof kitSize>;
