import type { Fault } from '../../../shared/fault.ts';
import { lettersOf } from '../../../shared/text-limits.ts';
import { moneyOfCell, wholeOfCell } from '../../engine/csv/cells.ts';
import { type CellOrder, dateOfCell, orderOfCells } from '../../engine/csv/date-cells.ts';
import type { Csv, CsvRow } from '../../engine/csv/read-csv.ts';
import type { Reading } from '../../engine/units/reading.ts';
import { DAY_COLUMNS } from './csv-columns.ts';

/** Reads the cells of one row by their columns; what is wrong is written down with the row and the column. */
export interface RowReader {
  /** True when the file has the column. One it does not have says nothing. */
  has(column: string): boolean;
  /** As it stands, without spaces around it; '' where there is nothing. */
  text(column: string): string;
  /** What `reading` makes of the cell; `none` where there is nothing or the column is not there. */
  read<T, N>(column: string, none: N, reading: (text: string) => Reading<T>): T | N;
  /** An amount in a currency, whose sign may stand beside it. */
  money<N>(column: string, none: N, currency: string): number | N;
  whole<N>(column: string, none: N): number | N;
  date<N>(column: string, none: N): string | N;
  wrong(column: string, message: string): void;
}

export const cellPath = (row: number, column: string): string => `row ${row}, column ${column}`;

/** Looked through once for each column of a file, which may have many rows, and once for all columns of days. */
const known = new WeakMap<Csv, Map<string, CellOrder | null>>();

const orderIn = (csv: Csv, columns: readonly string[], some: readonly string[]): CellOrder | null => {
  const orders = known.get(csv) ?? new Map<string, CellOrder | null>();
  known.set(csv, orders);
  const key = some.join('\n');
  const places = some.map((column) => columns.indexOf(column));
  const cells = () => csv.rows.flatMap((row) => places.map((place) => row.cells[place] ?? ''));
  const order = orders.has(key) ? orders.get(key)! : orderOfCells(cells());
  orders.set(key, order);
  return order;
};

/** What the other dates of a column say of the order of day and month, or else those of all columns: one program wrote them. */
const orderOfColumn = (csv: Csv, columns: readonly string[], column: string): CellOrder | null =>
  orderIn(csv, columns, [column]) ?? orderIn(csv, columns, DAY_COLUMNS);

export const rowReader = (csv: Csv, columns: readonly string[], row: CsvRow, faults: Fault[]): RowReader => {
  const { dialect } = csv;
  const text = (column: string) => (row.cells[columns.indexOf(column)] ?? '').trim();
  const wrong = (column: string, message: string) => {
    faults.push({ path: cellPath(row.number, column), message });
  };
  const read: RowReader['read'] = (column, none, reading) => {
    const cell = text(column);
    if (cell === '') return none;
    const result = reading(cell);
    if (result.ok) return result.value;
    wrong(column, result.reason);
    return none;
  };
  return {
    has: (column) => columns.includes(column),
    text,
    read,
    wrong,
    money: (column, none, currency) => read(column, none, (cell) => moneyOfCell(cell, dialect, currency)),
    whole: (column, none) => read(column, none, (cell) => wholeOfCell(cell, dialect)),
    date: (column, none) => read(column, none, (cell) => dateOfCell(cell, orderOfColumn(csv, columns, column))),
  };
};

/** Says so where a text has more letters than it may have. */
export const fitsIn = (row: RowReader, column: string, most: number): void => {
  if (lettersOf(row.text(column)) > most)
    row.wrong(column, `is too long. ${most.toLocaleString('en')} letters are the most`);
};

/** Text around which spaces count for nothing: left as it is where that is all that differs, however long it is. */
export const textNow = (row: RowReader, column: string, was: string | null, most: number): string | null => {
  if (!row.has(column)) return was;
  const text = row.text(column);
  if (was !== null && was.trim() === text) return was;
  fitsIn(row, column, most);
  return text || null;
};
