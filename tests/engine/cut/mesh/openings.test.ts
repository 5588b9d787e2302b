import { describe, expect, it } from 'vitest';
import { openingsOfPiece, openingsOfSheet } from '../../../../src/engine/cut/mesh/openings.ts';

const square = { acrossMm: 50, alongMm: 50 };

describe('sizes in whole openings of a mesh', () => {
  it('of a piece are never less than it has to be, and none more than that takes', () => {
    expect(openingsOfPiece({ widthMm: 180, lengthMm: 890 }, square)).toEqual({ across: 4, along: 18 });
    expect(openingsOfPiece({ widthMm: 200, lengthMm: 900 }, square)).toEqual({ across: 4, along: 18 });
    expect(openingsOfPiece({ widthMm: 201, lengthMm: 901 }, square)).toEqual({ across: 5, along: 19 });
    expect(openingsOfPiece({ widthMm: 3, lengthMm: 3 }, square)).toEqual({ across: 1, along: 1 });
  });

  it('of a sheet are whole ones', () => {
    expect(openingsOfSheet({ widthMm: 1220, lengthMm: 2440 }, square)).toEqual({ across: 24, along: 48 });
    expect(openingsOfSheet({ widthMm: 40, lengthMm: 2400 }, square)).toEqual({ across: 0, along: 48 });
  });

  it('of half an inch lose no opening to rounding', () => {
    const half = { acrossMm: 12.7, alongMm: 12.7 };
    expect(openingsOfSheet({ widthMm: 914.4, lengthMm: 45_720 }, half)).toEqual({ across: 72, along: 3600 });
    expect(openingsOfPiece({ widthMm: 0.1 * 127 * 3, lengthMm: 889 }, half)).toEqual({ across: 3, along: 70 });
  });

  it('of a mesh that is not square depend on how a piece lies', () => {
    const oblong = { acrossMm: 50, alongMm: 100 };
    expect(openingsOfPiece({ widthMm: 180, lengthMm: 890 }, oblong)).toEqual({ across: 4, along: 9 });
    expect(openingsOfPiece({ widthMm: 180, lengthMm: 890 }, oblong, true)).toEqual({ across: 18, along: 2 });
  });
});
