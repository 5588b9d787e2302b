import type { Casting } from '../../../shared/casting.ts';
import type { Material } from '../../../shared/material.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import type { FieldWords } from './fits-yard-file.ts';
import { sayAt } from './fits-yard-file.ts';
import type { FormFields } from './form-fields.ts';
import type { ShownReader } from './shown-reader.ts';
import { sizesText, sizesTyped } from './sizes-typed.ts';

type Sheets = NonNullable<Casting['sheets']>;

/** Rows of a form: no piece is cut from so many materials. */
const MOST_ROWS = 20;
const AS_WRITTEN = 'no';

const rowNumbers = Array.from({ length: MOST_ROWS }, (_, row) => row);
const namesOf = (row: number) => [`sheet-${row}`, `sheetSizes-${row}`, `sheetTurn-${row}`] as const;

/** What is cut from one material and may be turned, or may not, stands in one row. */
const rowsOf = (sheets: Sheets): { material: string; mayTurn: boolean; sizes: Sheets }[] => {
  const rows: { material: string; mayTurn: boolean; sizes: Sheets }[] = [];
  for (const one of sheets) {
    const row = rows.find((x) => x.material === one.material && x.mayTurn === one.mayTurn);
    if (row) row.sizes.push(one);
    else rows.push({ material: one.material, mayTurn: one.mayTurn, sizes: [one] });
  }
  return rows;
};

/** How many rows of the form are filled in. */
export const sheetRowCount = (sheets: Casting['sheets']): number => rowsOf(sheets ?? []).length;

/** What the rows of pieces cut from sheets show. */
export const sheetTexts = (sheets: Casting['sheets'], system: UnitSystem): FormFields =>
  Object.fromEntries(
    rowsOf(sheets ?? []).flatMap(({ material, mayTurn, sizes }, row) => {
      const [which, pieces, turn] = namesOf(row);
      return [
        [which, material],
        [pieces, sizesText(sizes, system)],
        [turn, mayTurn ? '' : AS_WRITTEN],
      ];
    }),
  );

/** Pieces that are cut from sheets for one casting; undefined where there are none. */
export const sheetsTyped = (
  reader: ShownReader<object>,
  before: Casting['sheets'],
  { materials, system }: { materials: readonly Material[]; system: UnitSystem },
): Casting['sheets'] => {
  if (rowNumbers.flatMap(namesOf).every((name) => reader.asShown(name))) return before;
  const sheets = rowNumbers.flatMap((row): Sheets => {
    const [which, pieces, turn] = namesOf(row);
    if (reader.text(which) === '' && reader.text(pieces) === '') return [];
    const material = materials.find(({ id }) => id === reader.text(which));
    if (!material) reader.refuse(which, 'What is it cut from?');
    const sizes = sizesTyped(reader.text(pieces), system);
    if (!sizes.ok) reader.refuse(pieces, sizes.reason);
    else if (sizes.value.length === 0) reader.refuse(pieces, 'How large is it?');
    if (!material || !sizes.ok) return [];
    return sizes.value.map((size) => ({ material: material.id, ...size, mayTurn: reader.text(turn) !== AS_WRITTEN }));
  });
  return sheets.length > 0 ? sheets : undefined;
};

/** Where a yard file's faults in pieces cut from sheets stand in the form. */
export const sheetWords = (typed: FormFields): FieldWords => {
  const first = rowNumbers.find((row) => (typed[`sheet-${row}`] ?? '') !== '') ?? 0;
  return {
    'sheets[].material': sayAt(`sheet-${first}`, 'It does not come as sheets: see its page in stock.'),
    'sheets[]': sayAt(`sheetSizes-${first}`, 'It is larger than a sheet of it.'),
  };
};
