import type { Raw } from './firm-references.ts';

const TOLERANCE = 1e-6;

const num = (x: unknown): number | undefined => (typeof x === 'number' && Number.isFinite(x) ? x : undefined);

/**
 * Whether a material, as it stands in a file, comes as sheets: both its sizes are said.
 *
 * Example: `isSheet({ sheetWidthMm: 1000 })` is false.
 */
export const isSheet = (material: Raw): boolean =>
  material.sheetWidthMm !== undefined && material.sheetLengthMm !== undefined;

/**
 * What does not fit together in what a material says of its sheets: each field with the reason. Shapes are checked elsewhere.
 *
 * Example: `sheetFaults({ meshMm: 50 })` is `[['meshMm', 'there are no sheets that it is of']]`.
 */
export const sheetFaults = (material: Raw): [key: string, reason: string][] => {
  const has = (key: string) => material[key] !== undefined;
  const faults: [string, string][] = [];
  if (has('sheetWidthMm') && !has('sheetLengthMm')) faults.push(['sheetWidthMm', 'a sheet has a length too']);
  if (has('sheetLengthMm') && !has('sheetWidthMm')) faults.push(['sheetLengthMm', 'a sheet has a width too']);
  if (isSheet(material) && has('stickMm')) faults.push(['stickMm', 'it comes as sheets, not as sticks']);
  for (const key of ['meshMm', 'rests'])
    if (has(key) && !isSheet(material)) faults.push([key, 'there are no sheets that it is of']);
  if (material.inSheets === true && !isSheet(material)) faults.push(['inSheets', 'there are no sheets that it is in']);
  return faults;
};

/** So many whole openings, of a piece rounded up, of a sheet down. */
const goesAlong = (pieceMm: number, sheetMm: number, meshMm: number): boolean =>
  Math.ceil((pieceMm - TOLERANCE) / meshMm) <= Math.floor((sheetMm + TOLERANCE) / meshMm);

/**
 * Whether a piece goes on a sheet of a material, turned only where it may. True where a figure is missing or mistyped: that is a
 * fault of shape. Without `meshMm` whole millimetres count.
 *
 * Example: of a mesh of 50, 1190 by 200 goes on a sheet of 1200 by 2400, and 1201 by 200 only turned.
 */
export const goesOnSheet = (piece: Raw, material: Raw): boolean => {
  const [width, length] = [num(piece.widthMm), num(piece.lengthMm)];
  const [across, along] = [num(material.sheetWidthMm), num(material.sheetLengthMm)];
  const mesh = num(material.meshMm) ?? 1;
  if (width === undefined || length === undefined || across === undefined || along === undefined || mesh <= 0)
    return true;
  const asItIs = goesAlong(width, across, mesh) && goesAlong(length, along, mesh);
  return asItIs || (piece.mayTurn !== false && goesAlong(length, across, mesh) && goesAlong(width, along, mesh));
};
