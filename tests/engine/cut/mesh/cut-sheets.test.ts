import { describe, expect, it } from 'vitest';
import type { Material, SheetCut } from '../../../../shared/material.ts';
import { bestRow, worthTo } from '../../../../src/engine/cut/mesh/cut-in-rows.ts';
import { cutSheets } from '../../../../src/engine/cut/mesh/cut-sheets.ts';
import { sheetStockOf } from '../../../../src/engine/cut/mesh/sheet-stock.ts';

const MESH: Material = {
  ...{ id: 'mesh', name: 'Mesh', unit: 'sheet', onHand: 1, pack: 1, minimum: 0, kerfMm: 0 },
  ...{ inSheets: true, sheetWidthMm: 1220, sheetLengthMm: 2440, meshMm: 50 },
};
const piece = (widthMm: number, lengthMm: number, mayTurn = true): SheetCut => ({
  ...{ material: 'mesh', widthMm, lengthMm },
  ...{ count: 1, mayTurn },
});
const PANEL = piece(180, 890);

/** Pieces for batches, one batch after the other, `[how many, at]`. */
const cut = (
  material: Partial<Material>,
  cuts: SheetCut[],
  batches: [count: number, at: number][],
  by?: () => number,
) => {
  const stock = sheetStockOf({ ...MESH, ...material }, [{ sheets: cuts }])!;
  const demands = batches.map(([count, at]) => ({
    ...{ at, for: `B${at}` },
    pieces: cuts.map((one) => ({ piece: stock.pieceOf(one), count })),
  }));
  return cutSheets(stock, demands, by);
};

describe('a row of pieces', () => {
  const [WAY, TURNED] = [
    { across: 4, along: 18, isTurned: false },
    { across: 18, along: 4, isTurned: true },
  ];

  it('loses as little as can be for each piece, and has as short a cut as can be', () => {
    expect(bestRow({ across: 24, along: 48 }, [WAY, TURNED], 6, worthTo([[WAY, TURNED]]))).toEqual({
      ...{ count: 6, way: WAY, cut: 'across' },
      rests: [{ x: 0, y: 18, across: 24, along: 30 }],
    });
    // One is wanted: the first cut goes across the width, and not from end to end.
    expect(bestRow({ across: 24, along: 48 }, [WAY], 1, worthTo([[WAY]]))?.rests).toEqual([
      { x: 4, y: 0, across: 20, along: 18 },
      { x: 0, y: 18, across: 24, along: 30 },
    ]);
  });

  it('leaves rests that the larger pieces go on too, rather than all of it in pieces for small ones', () => {
    const [long, short] = [
      { across: 7, along: 35, isTurned: false },
      { across: 7, along: 23, isTurned: false },
    ];
    // Cut off across, 26 by 23 and 33 by 13 would hold no long one any more.
    expect(bestRow({ across: 33, along: 36 }, [short], 1, worthTo([[long], [short]]))?.rests).toEqual([
      { x: 7, y: 0, across: 26, along: 36 },
    ]);
  });

  it('is turned only where it may be, and of nothing where it does not go on', () => {
    expect(bestRow({ across: 20, along: 7 }, [WAY, TURNED], 3, worthTo([[WAY]]))).toMatchObject({
      count: 1,
      way: TURNED,
    });
    expect(bestRow({ across: 20, along: 7 }, [WAY], 3, worthTo([[WAY]]))).toBeNull();
  });
});

describe('sheets cut for batches', () => {
  it('are opened one after the other, and what is left is cut for those that follow', () => {
    const cuts = cut(
      {},
      [PANEL],
      [
        [6, 1],
        [6, 2],
        [2, 3],
      ],
    )!;
    expect(cuts.map(({ for: to, rest, pieces }) => [to, rest, pieces.length])).toEqual([
      ['B1', undefined, 6],
      ['B2', { widthMm: 1220, lengthMm: 1540 }, 6],
      ['B3', { widthMm: 1220, lengthMm: 640 }, 2],
    ]);
    // To the outer edge there are 40 mm more than whole openings; turned, two lie one below the other.
    expect(cuts[2]!.pieces).toEqual([
      { widthMm: 180, lengthMm: 890, xMm: 0, yMm: 0, isTurned: true },
      { widthMm: 180, lengthMm: 890, xMm: 0, yMm: 200, isTurned: true },
    ]);
  });

  it('are not opened while a rest holds a piece, the smallest first', () => {
    const rests = [
      { widthMm: 1000, lengthMm: 900, count: 1 },
      { widthMm: 210, lengthMm: 905, count: 1 },
      { widthMm: 400, lengthMm: 600, count: 3 },
    ];
    const cuts = cut(
      { rests },
      [PANEL],
      [
        [1, 1],
        [1, 2],
      ],
    )!;
    expect(cuts.map(({ rest, kept }) => [rest, kept.length])).toEqual([
      [{ widthMm: 210, lengthMm: 905 }, 0],
      [{ widthMm: 1000, lengthMm: 900 }, 1],
    ]);
  });

  it('keep rests from which anything could be cut, to the millimetre, and no others', () => {
    const [only] = cut({ meshMm: 12.7, sheetWidthMm: 1000, sheetLengthMm: 1000 }, [piece(300, 300)], [[1, 1]])!;
    // 24 openings are 304.8 mm: beside the piece 695.2 are left to the edge.
    expect(only!.kept).toEqual([
      { widthMm: 695.2, lengthMm: 304.8, xMm: 304.8, yMm: 0 },
      { widthMm: 1000, lengthMm: 695.2, xMm: 0, yMm: 304.8 },
    ]);
    expect(cut({ sheetWidthMm: 400, sheetLengthMm: 1000 }, [piece(300, 900)], [[1, 1]])![0]!.kept).toEqual([]);
  });

  it('are no more than there are by then', () => {
    expect(cut({}, [PANEL], [[20, 1]], () => 1)).toBeNull();
    expect(cut({}, [PANEL], [[20, 1]], () => 2)).not.toBeNull();
  });

  it('are of materials in sheets only', () => {
    expect(sheetStockOf({ ...MESH, inSheets: false }, [])).toBeNull();
  });
});
