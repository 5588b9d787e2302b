import type { Material } from '../../../shared/material.ts';
import type { PlanFile } from '../../../shared/plan.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import type { MeshPiece } from '../../engine/cut/mesh/mesh-kinds.ts';
import {
  type MeshMaterial,
  type MeshPlan,
  meshPlan,
  type SheetPlan,
  wastePercent,
} from '../../engine/cut/mesh/mesh-plan.ts';
import type { Size } from '../../engine/cut/mesh/openings.ts';
import { sheetsDrawn } from '../../engine/cut/mesh/sheets-drawn.ts';
import { lengthText, shortLengthText, sizeText } from '../../engine/units/length.ts';

/** A part of a sheet to be drawn, mm from its left and its upper edge, with its size in figures. */
interface SheetPart extends Size {
  xMm: number;
  yMm: number;
  text: string;
}

/** A cut from edge to edge, in the order of cutting; `at` is how far from the left edge it is, or from the upper one. */
interface SheetCutFacts {
  number: number;
  way: 'across' | 'lengthways';
  xMm: number;
  yMm: number;
  lengthMm: number;
  at: string;
}

/** One sheet, or a rest of one, with what is cut from it. */
export interface SheetFacts {
  /** In the yard's units: "1000 mm by 6000 mm". */
  size: string;
  whole: boolean;
  widthMm: number;
  lengthMm: number;
  /** Alike ones together, as they are trimmed. */
  pieces: readonly { size: string; count: number; piece: string }[];
  /** What is kept of it. */
  kept: readonly string[];
  cuts: readonly SheetCutFacts[];
  parts: readonly SheetPart[];
  rests: readonly SheetPart[];
}

/** How the sheets of one material are cut up for a session. */
export interface MeshFacts {
  name: string;
  sheets: readonly SheetFacts[];
  /** Whole sheets that are opened, and how many nobody could do without. */
  whole: number;
  atLeast: number;
  /** Of all that is opened, in percent: neither a piece nor kept. */
  wastePercent: number;
}

/** More rests than that are not looked through for one session; the largest are. */
const MOST_RESTS = 12;

const shortText = ({ widthMm, lengthMm }: Size, system: UnitSystem): string =>
  `${shortLengthText(widthMm, system)} × ${shortLengthText(lengthMm, system)}`;

const areaOf = ({ widthMm, lengthMm }: Size): number => widthMm * lengthMm;

/** The sheets of a material, and the smallest piece that anything needs of it: from there on a rest is kept. */
const sheetsOf = ({ castings }: YardFile, material: Material): MeshMaterial | null => {
  const { sheetWidthMm: widthMm, sheetLengthMm: lengthMm, meshMm = 1, rests = [] } = material;
  const [smallest] = castings
    .flatMap(({ sheets = [] }) => sheets.filter((one) => one.material === material.id))
    .sort((a, b) => areaOf(a) - areaOf(b));
  if (widthMm === undefined || lengthMm === undefined || !smallest) return null;
  const there = [...rests].sort((a, b) => areaOf(b) - areaOf(a)).flatMap((x) => new Array<Size>(x.count).fill(x));
  return {
    ...{ sheet: { widthMm, lengthMm }, grid: { acrossMm: meshMm, alongMm: meshMm } },
    ...{ rests: there.slice(0, MOST_RESTS), usable: smallest },
  };
};

/** What the pieces of some batches need of a material. */
const piecesFor = (
  plan: PlanFile,
  { castings }: YardFile,
  material: string,
  batches: ReadonlySet<string>,
): MeshPiece[] =>
  castings.flatMap(({ id, name, sheets = [] }) => {
    const poured = plan.pours.filter((pour) => pour.casting === id && batches.has(pour.batch)).length;
    return sheets
      .filter((one) => one.material === material)
      .map(({ widthMm, lengthMm, count, mayTurn }) => ({
        ...{ widthMm, lengthMm, mayTurn },
        count: count * poured,
        for: name,
      }));
  });

/** As a plan cuts them that counts sheets, and how many nobody could do without: as if nothing were lost. */
const asPlanned = (
  plan: PlanFile,
  { castings }: YardFile,
  material: Material,
  { from, batches }: { from: MeshMaterial; batches: ReadonlySet<string> },
): Pick<MeshPlan, 'sheets' | 'whole' | 'atLeast'> => {
  const own = (plan.sheets ?? []).filter((one) => one.material === material.id && batches.has(one.for));
  const nameOf = (batch: string, { widthMm, lengthMm }: Size) => {
    const cut = new Set(plan.pours.filter((pour) => pour.batch === batch).map(({ casting }) => casting));
    const isCut = (one: Size & { material: string }) =>
      one.material === material.id && one.widthMm === widthMm && one.lengthMm === lengthMm;
    return castings.find(({ id, sheets = [] }) => cut.has(id) && sheets.some(isCut))?.name ?? material.name;
  };
  const drawing = {
    sheet: from.sheet,
    meshMm: from.grid.acrossMm,
    forOf: ({ for: id }: { for: string }, size: Size) => nameOf(id, size),
  };
  const sheets = sheetsDrawn(own, drawing);
  const needed = sheets.flatMap(({ pieces }) => pieces).reduce((sum, one) => sum + areaOf(one), 0);
  const there = from.rests.reduce((sum, one) => sum + areaOf(one), 0);
  return {
    ...{ sheets, whole: own.filter(({ rest }) => rest === undefined).length },
    atLeast: Math.max(0, Math.ceil((needed - there) / areaOf(from.sheet) - 1e-9)),
  };
};

const alike = (pieces: SheetPlan['pieces'], system: UnitSystem): SheetFacts['pieces'] => {
  const found = new Map<string, { size: string; count: number; piece: string }>();
  for (const { trimTo, isTurned, for: piece } of pieces) {
    const asAsked = isTurned ? { widthMm: trimTo.lengthMm, lengthMm: trimTo.widthMm } : trimTo;
    const size = sizeText(asAsked, system);
    const same = found.get(`${piece} ${size}`);
    if (same) same.count++;
    else found.set(`${piece} ${size}`, { size, count: 1, piece });
  }
  return [...found.values()];
};

const sheetFacts = ({ size, rest, cuts, pieces, kept }: SheetPlan, system: UnitSystem): SheetFacts => ({
  ...{ size: sizeText(size, system), whole: rest === undefined, widthMm: size.widthMm, lengthMm: size.lengthMm },
  pieces: alike(pieces, system),
  kept: kept.map((one) => sizeText(one, system)),
  cuts: cuts.map(({ cut, ...line }) => ({
    ...line,
    way: cut === 'across' ? 'lengthways' : 'across',
    at: lengthText(cut === 'across' ? line.xMm : line.yMm, system),
  })),
  parts: pieces.map(({ xMm, yMm, widthMm, lengthMm, trimTo }) => ({
    ...{ xMm, yMm, widthMm, lengthMm },
    text: shortText(trimTo, system),
  })),
  rests: kept.map((one) => ({ ...one, text: shortText(one, system) })),
});

/**
 * How sheets and rolls are cut up for some batches, material by material: of what is in sheets as the plan cuts it, of
 * anything else from the rests that are there now and from whole ones. There a plan counts what a piece takes of the material, and no sheets: this says
 * how to come by it.
 */
export const meshList = (
  plan: PlanFile,
  yard: YardFile,
  batches: ReadonlySet<string>,
  system: UnitSystem,
): MeshFacts[] =>
  yard.materials.flatMap((material) => {
    const from = sheetsOf(yard, material);
    const pieces = from ? piecesFor(plan, yard, material.id, batches) : [];
    if (!from || pieces.every(({ count }) => count === 0)) return [];
    const answer = material.inSheets ? null : meshPlan(from, pieces, 'page');
    if (answer?.is === 'too large') return [];
    const { sheets, whole, atLeast } = answer?.plan ?? asPlanned(plan, yard, material, { from, batches });
    if (sheets.length === 0) return [];
    return [
      {
        ...{ name: material.name, whole, atLeast, wastePercent: Math.round(wastePercent(sheets)) },
        sheets: sheets.map((sheet) => sheetFacts(sheet, system)),
      },
    ];
  });
