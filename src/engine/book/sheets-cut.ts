import type { Casting } from '../../../shared/casting.ts';
import type { Material, SheetCut } from '../../../shared/material.ts';
import type { PlanFile, PlanSheet } from '../../../shared/plan.ts';
import { cutSheets } from '../cut/mesh/cut-sheets.ts';
import { sheetStockOf } from '../cut/mesh/sheet-stock.ts';
import { countedOnHand } from '../cut/offcuts.ts';
import { type StickCut, sticksFor } from './sticks-cut.ts';

/** A whole sheet of a material that is cut, or a rest of one, with its pieces and what is kept of it. */
export type SheetTaken = Omit<PlanSheet, 'for'>;

/** What pieces are cut from: sticks and offcuts, sheets and rests. */
export type CutFrom = StickCut | SheetTaken;

type Size = Pick<PlanSheet['kept'][number], 'widthMm' | 'lengthMm'>;
type Counts = ReadonlyMap<string, number>;

const TOLERANCE = 1e-6;

/** "600 by 900", as rests are told apart. */
export const sizeKey = ({ widthMm, lengthMm }: Size): string => `${widthMm} by ${lengthMm}`;

/** The sheets of a plan that are cut for a batch. */
export const sheetsFor = (sheets: readonly PlanSheet[], cutFor: string): SheetTaken[] =>
  sheets.filter((sheet) => sheet.for === cutFor).map(({ for: _for, ...sheet }) => sheet);

/** All that a plan cuts for a batch or an order, and from what. */
export const cutFromFor = ({ sticks, sheets = [] }: Pick<PlanFile, 'sticks' | 'sheets'>, cutFor: string): CutFrom[] => [
  ...sticksFor(sticks, cutFor),
  ...sheetsFor(sheets, cutFor),
];

const countsOf = (sizes: readonly (Size & { count?: number })[]): Counts => {
  const counts = new Map<string, number>();
  for (const one of sizes) counts.set(sizeKey(one), (counts.get(sizeKey(one)) ?? 0) + (one.count ?? 1));
  return counts;
};

const isSame = (a: Counts, b: Counts): boolean => a.size === b.size && [...a].every(([key, n]) => b.get(key) === n);

/** Whether sheets and rests are in the yard, each of them once, and no smaller than all that was cut from them. */
const areThere = (material: Material, sheets: readonly SheetTaken[]): boolean => {
  const there = countsOf(material.rests ?? []);
  const rests = countsOf(sheets.flatMap(({ rest }) => (rest ? [rest] : [])));
  const whole = sheets.filter(({ rest }) => rest === undefined);
  const { sheetWidthMm: widthMm = 0, sheetLengthMm: lengthMm = 0 } = material;
  const isOn = (part: PlanSheet['kept'][number]) =>
    part.xMm + part.widthMm <= widthMm + TOLERANCE && part.yMm + part.lengthMm <= lengthMm + TOLERANCE;
  return (
    whole.length <= countedOnHand(material) &&
    [...rests].every(([size, count]) => count <= (there.get(size) ?? 0)) &&
    whole.every(({ kept }) => kept.every(isOn))
  );
};

/** As a plan would cut them, be the sheets there or not. */
const inRows = (
  material: Material,
  castings: readonly Pick<Casting, 'sheets'>[],
  wanted: readonly SheetCut[],
): SheetTaken[] => {
  const stock = sheetStockOf(material, castings);
  const pieces = stock ? wanted.map((cut) => ({ piece: stock.pieceOf(cut), count: cut.count })) : [];
  const cuts = stock && cutSheets(stock, [{ at: 0, for: material.id, pieces }]);
  return (cuts ?? []).map(({ at: _at, for: _for, ...cut }) => ({ material: material.id, ...cut }));
};

/**
 * Which sheets and rests pieces are cut from: the ones that are named for them (by a plan), where they are in the yard and just
 * these pieces come from them; else as a plan would cut them. Of materials that are not in sheets nothing is cut.
 */
export const sheetsCut = (
  { materials, castings }: { materials: readonly Material[]; castings: readonly Pick<Casting, 'sheets'>[] },
  pieces: readonly SheetCut[],
  named: readonly CutFrom[],
): { sheets: SheetTaken[]; asNamed: boolean } => {
  let asNamed = true;
  const sheets = materials.flatMap((material) => {
    const wanted = pieces.filter((cut) => cut.material === material.id && cut.count > 0);
    const own = named.filter((one): one is SheetTaken => 'pieces' in one && one.material === material.id);
    if (!material.inSheets || (wanted.length === 0 && own.length === 0)) return [];
    const areWanted = isSame(countsOf(wanted), countsOf(own.flatMap((one) => one.pieces)));
    if (areWanted && areThere(material, own)) return own;
    asNamed = false;
    return inRows(material, castings, wanted);
  });
  return { sheets, asNamed };
};
