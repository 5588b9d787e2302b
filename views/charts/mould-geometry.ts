import { rounded } from './rounded.ts';

/** Sizes of the drawing, in units of the drawing (pixels on a screen). */
export interface MouldSizes {
  /** Of the longest mould of the yard. */
  width: number;
  height: number;
  /** The thin bar below it, and the gap before that. */
  bar: number;
  gap: number;
}

export interface MouldDrawn {
  /** The mould itself. */
  width: number;
  height: number;
  /** Turns left to its next sealing coat, of all from one to the next; null where it is never sealed. */
  coat: { y: number; height: number; left: number } | null;
  inAll: number;
}

/** No mould is so short that nothing could be seen of it. */
const LEAST_SHARE = 0.2;

/**
 * A mould to its length, beside the longest one of the yard; one whose length nobody recorded is as long as that.
 *
 * Example: 600 of 1200 mm in 160 is 80 wide; with 2 of 8 turns left its bar is 20.
 */
export const mouldDrawn = (
  { lengthMm, turnsToSealing, turnsBetweenCoats }: MouldMeasured,
  longestMm: number,
  sizes: MouldSizes,
): MouldDrawn => {
  const share = lengthMm === null || longestMm <= 0 ? 1 : Math.min(1, Math.max(LEAST_SHARE, lengthMm / longestMm));
  const width = rounded(sizes.width * share);
  const turns = turnsBetweenCoats === null || turnsToSealing === null ? null : turnsToSealing / turnsBetweenCoats;
  return {
    width,
    height: sizes.height,
    coat:
      turns === null
        ? null
        : { y: sizes.height + sizes.gap, height: sizes.bar, left: rounded(width * Math.min(1, Math.max(0, turns))) },
    inAll: sizes.height + sizes.gap + sizes.bar,
  };
};

/** What of a mould is drawn. */
interface MouldMeasured {
  lengthMm: number | null;
  turnsToSealing: number | null;
  turnsBetweenCoats: number | null;
}
