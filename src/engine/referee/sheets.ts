import type { Material } from '../../../shared/material.ts';
import type { PlanSheet } from '../../../shared/plan.ts';
import { type Finding, finder, TOLERANCE } from './finding.ts';
import type { Ground } from './ground.ts';

type Found = (message: string) => void;
type Size = { widthMm: number; lengthMm: number };
type Rect = Size & { xMm: number; yMm: number };

const sizeText = ({ widthMm, lengthMm }: Size): string => `${widthMm} by ${lengthMm} mm`;

/** Pieces that are still to be cut for a batch from a material. */
interface Wanted extends Size {
  batch: string;
  material: string;
  mayTurn: boolean;
  count: number;
}

const wantedOf = ({ batches, materials }: Ground): Wanted[] =>
  batches
    .filter(({ underWay }) => !underWay)
    .flatMap(({ batch, pours }) =>
      pours
        .flatMap(({ casting }) => casting.sheets ?? [])
        .filter((cut) => materials.get(cut.material)!.inSheets)
        .map((cut) => ({ ...cut, batch: batch.id })),
    );

const isFor = (one: Wanted, { material, for: batch }: PlanSheet, piece: Size): boolean =>
  one.count > 0 &&
  one.batch === batch &&
  one.material === material &&
  one.widthMm === piece.widthMm &&
  one.lengthMm === piece.lengthMm;

/** One lying as it is may be for a piece that may not turn, and is so where there is one. */
const takeWanted = (wanted: readonly Wanted[], sheet: PlanSheet, piece: PlanSheet['pieces'][number]): boolean => {
  const own = wanted.filter((one) => isFor(one, sheet, piece) && (one.mayTurn || !piece.isTurned));
  const one = own.find(({ mayTurn }) => !mayTurn) ?? own[0];
  if (one) one.count--;
  return one !== undefined;
};

const isAtWire = (mm: number, meshMm: number): boolean =>
  Math.abs(mm - Math.round(mm / meshMm) * meshMm) <= TOLERANCE * Math.max(1, meshMm);

/** As it is cut out: whole openings, the fewest that are no smaller. */
const cutOut = ({ widthMm, lengthMm, xMm, yMm, isTurned }: PlanSheet['pieces'][number], meshMm: number): Rect => {
  const whole = (mm: number) => Math.ceil((mm - TOLERANCE) / meshMm) * meshMm;
  const [across, along] = isTurned ? [lengthMm, widthMm] : [widthMm, lengthMm];
  return { xMm, yMm, widthMm: whole(across), lengthMm: whole(along) };
};

const isOn = (rect: Rect, { widthMm, lengthMm }: Size): boolean =>
  rect.xMm + rect.widthMm <= widthMm + TOLERANCE && rect.yMm + rect.lengthMm <= lengthMm + TOLERANCE;

/** A line from edge to edge that goes through no part and has some on both sides; null where there is none. */
const cutInTwo = (parts: readonly Rect[]): [Rect[], Rect[]] | null => {
  for (const part of parts)
    for (const [from, size] of [
      ['xMm', 'widthMm'],
      ['yMm', 'lengthMm'],
    ] as const) {
      const before = parts.filter((one) => one[from] + one[size] <= part[from] + TOLERANCE);
      const behind = parts.filter((one) => one[from] >= part[from] - TOLERANCE);
      if (before.length > 0 && before.length + behind.length === parts.length) return [before, behind];
    }
  return null;
};

const comeApart = (parts: readonly Rect[]): boolean => {
  if (parts.length < 2) return true;
  const both = cutInTwo(parts);
  return both?.every(comeApart) ?? false;
};

const checkPieces = (sheet: PlanSheet, { meshMm = 1 }: Material, size: Size, found: Found): Rect[] => {
  const openings = {
    widthMm: Math.floor((size.widthMm + TOLERANCE) / meshMm) * meshMm,
    lengthMm: Math.floor((size.lengthMm + TOLERANCE) / meshMm) * meshMm,
  };
  return sheet.pieces.map((piece) => {
    const rect = cutOut(piece, meshMm);
    if (!isAtWire(rect.xMm, meshMm) || !isAtWire(rect.yMm, meshMm))
      found(`${sizeText(piece)} does not begin at a wire`);
    if (!isOn(rect, openings)) found(`${sizeText(piece)} goes over the edge of ${sizeText(size)}`);
    return rect;
  });
};

const checkKept = (sheet: PlanSheet, { meshMm = 1 }: Material, size: Size, found: Found): Rect[] => {
  for (const rest of sheet.kept) {
    const isCut = (mm: number, edge: number) => isAtWire(mm, meshMm) || Math.abs(mm - edge) <= TOLERANCE;
    const edges = isCut(rest.xMm + rest.widthMm, size.widthMm) && isCut(rest.yMm + rest.lengthMm, size.lengthMm);
    if (!edges || !isAtWire(rest.xMm, meshMm) || !isAtWire(rest.yMm, meshMm))
      found(`the rest of ${sizeText(rest)} is not cut at a wire`);
    if (!isOn(rest, size)) found(`the rest of ${sizeText(rest)} goes over the edge of ${sizeText(size)}`);
  }
  return [...sheet.kept];
};

/** Rests there are, by material and size. */
class Rests {
  private readonly there = new Map<string, number>();

  add(material: string, { widthMm, lengthMm }: Size, count: number): void {
    const key = JSON.stringify([material, widthMm, lengthMm]);
    this.there.set(key, (this.there.get(key) ?? 0) + count);
  }

  /** Whether one was there. */
  take(material: string, { widthMm, lengthMm }: Size): boolean {
    const left = this.there.get(JSON.stringify([material, widthMm, lengthMm])) ?? 0;
    this.add(material, { widthMm, lengthMm }, -1);
    return left > 0;
  }
}

/** Sheets in the order in which they are cut. */
const inTime = ({ plan, batches }: Ground): PlanSheet[] => {
  const starts = new Map(batches.map(({ batch, start }) => [batch.id, start]));
  return [...(plan.sheets ?? [])].sort((a, b) => starts.get(a.for)! - starts.get(b.for)!);
};

/**
 * R10, sheets: each rest that is cut is there by then, each piece that is used is cut for its batch and none for nothing, and
 * all that is cut from one sheet lies on it, at wires, so that cuts from edge to edge take it apart.
 *
 * Example: two pieces of 300 by 400 at 0, 0 and at 200, 0 are found: no cut takes them apart.
 */
export const checkSheets = (ground: Ground): Finding[] => {
  const findings: Finding[] = [];
  const wanted = wantedOf(ground);
  const rests = new Rests();
  for (const { id, rests: own = [] } of ground.yard.materials) for (const one of own) rests.add(id, one, one.count);
  for (const sheet of inTime(ground)) {
    const found = (message: string) =>
      finder(findings, 'R10')(`a sheet of ${sheet.material} for ${sheet.for}: ${message}`);
    const material = ground.materials.get(sheet.material)!;
    const size = sheet.rest ?? { widthMm: material.sheetWidthMm!, lengthMm: material.sheetLengthMm! };
    if (sheet.rest && !rests.take(material.id, sheet.rest)) found(`there is no rest of ${sizeText(size)}`);
    const parts = [...checkPieces(sheet, material, size, found), ...checkKept(sheet, material, size, found)];
    if (!comeApart(parts)) found('cuts from edge to edge do not take it apart');
    for (const piece of sheet.pieces)
      if (!takeWanted(wanted, sheet, piece)) found(`${sizeText(piece)} is cut, which nothing needs`);
    for (const rest of sheet.kept) rests.add(material.id, rest, 1);
  }
  for (const one of wanted)
    if (one.count > 0)
      finder(findings, 'R10')(`${one.count} of ${sizeText(one)} of ${one.material} are missing for ${one.batch}`);
  return findings;
};
