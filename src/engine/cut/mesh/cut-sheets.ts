import type { PlanSheet } from '../../../../shared/plan.ts';
import type { Minute } from '../../../../shared/time.ts';
import { cutInRows, type Row, type Spot } from './cut-in-rows.ts';
import {
  inOrderOfCutting,
  type Laid,
  rectOf,
  type SheetPiece,
  type SheetStock,
  type SomePieces,
} from './sheet-stock.ts';

/** Pieces for a batch, needed at an instant. */
export interface SheetDemand {
  at: Minute;
  for: string;
  pieces: readonly SomePieces[];
}

/** A sheet or a rest that is cut for a batch. */
type Cut = Omit<PlanSheet, 'material'>;

/** What is being cut for a batch, from a sheet or a rest. */
interface UnderTheKnife {
  from: Laid;
  cut: Cut;
}

/** A sheet or a rest, or a part of what is under the knife, so many openings from its left and upper edge. */
interface Open extends Spot {
  /** As it lies there; left out of what is not under the knife. */
  part?: UnderTheKnife;
  laid: Laid;
  isWhole: boolean;
}

const openOf = (laid: Laid, isWhole: boolean): Open => ({
  ...{ x: 0, y: 0, across: laid.across, along: laid.along },
  ...{ laid, isWhole },
});

const placed = ({ x, y }: Spot, { way, cut, count }: Row, { widthMm, lengthMm }: SheetPiece, meshMm: number) =>
  Array.from({ length: count }, (_, i) => ({
    ...{ widthMm, lengthMm },
    xMm: Number(((x + (cut === 'across' ? i * way.across : 0)) * meshMm).toFixed(6)),
    yMm: Number(((y + (cut === 'along' ? i * way.along : 0)) * meshMm).toFixed(6)),
    ...(way.isTurned ? { isTurned: true as const } : {}),
  }));

/** Cuts for one batch; what is left of what was under the knife is rests then. */
const cutFor = (stock: SheetStock, open: readonly Open[], demand: SheetDemand): { open: Open[]; cuts: Cut[] } => {
  const cuts: Cut[] = [];
  let left = open;
  const begun = ({ laid, isWhole }: Open): UnderTheKnife => {
    const cut: Cut = { for: demand.for, ...(isWhole ? {} : { rest: { ...laid.size } }), pieces: [], kept: [] };
    cuts.push(cut);
    return { from: laid, cut };
  };
  for (const { piece, count } of inOrderOfCutting(demand.pieces))
    left = cutInRows(left, piece.ways, count, {
      worthOf: stock.worthOf,
      isThere: () => true,
      open: () => openOf(stock.sheet, true),
      cut: (from, row) => {
        const part = from.part ?? begun(from);
        part.cut.pieces.push(...placed(from, row, piece, stock.meshMm));
        return row.rests.map((rest) => ({
          ...{ ...rest, x: from.x + rest.x, y: from.y + rest.y },
          ...{ part, laid: from.laid, isWhole: false },
        }));
      },
    });
  const rests = left.map((one): Open => {
    if (!one.part) return one;
    const kept = rectOf(one.part.from, one, stock.meshMm);
    one.part.cut.kept.push(kept);
    const { across, along } = one;
    return openOf({ across, along, size: { widthMm: kept.widthMm, lengthMm: kept.lengthMm } }, false);
  });
  return { open: rests, cuts };
};

/** How many whole sheets may be open by each batch; what is opened stays so, so the least of what comes counts. */
const limitsOf = (demands: readonly SheetDemand[], sheetsBy: (at: Minute) => number): number[] => {
  const limits = demands.map(({ at }) => sheetsBy(at));
  for (let i = limits.length - 2; i >= 0; i--) limits[i] = Math.min(limits[i]!, limits[i + 1]!);
  return limits;
};

/**
 * Which sheet or rest every piece is cut from, batch by batch in order of time, in rows (`cutInRows`), with what is kept of it for
 * the batches that follow; a rest is kept where anything could be cut from it. With `sheetsBy` no more whole sheets
 * are cut by an instant than that: null where these rows need more.
 *
 * Example: sheets of 1200 by 2400, mesh of 50, six pieces of 180 by 890 for B1: one sheet, and 1200 by 1500 is kept.
 */
export const cutSheets = (
  stock: SheetStock,
  demands: readonly SheetDemand[],
  sheetsBy: (at: Minute) => number = () => Number.POSITIVE_INFINITY,
): (Cut & { at: Minute })[] | null => {
  const inTime = [...demands].sort((a, b) => a.at - b.at);
  const limits = limitsOf(inTime, sheetsBy);
  const cuts: (Cut & { at: Minute })[] = [];
  let open = stock.rests.map((rest) => openOf(rest, false));
  let whole = 0;
  for (const [i, demand] of inTime.entries()) {
    const done = cutFor(stock, open, demand);
    open = done.open;
    whole += done.cuts.filter(({ rest }) => rest === undefined).length;
    if (whole > limits[i]! + 1e-9) return null;
    cuts.push(...done.cuts.map((cut) => ({ ...cut, at: demand.at })));
  }
  return cuts;
};
