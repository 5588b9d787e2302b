import type { Tx } from '../../../db/open.ts';
import { putStoreRows, storeRows } from '../../../db/stores/store-rows.ts';
import { loadYardFile } from '../../../db/stores/yard-store.ts';
import type { Fault } from '../../../shared/fault.ts';
import { quoted } from '../../../shared/said-back.ts';
import { separatorSaid, withoutFirstRow } from '../../engine/csv/dialect.ts';
import { type Csv, type CsvRead, readCsv } from '../../engine/csv/read-csv.ts';
import { done, type Outcome, refuse } from '../core/context.ts';
import { COLUMNS, columnNames, TABLE_KINDS, type TableKind } from './csv-columns.ts';
import type { TableRows } from './csv-ground.ts';
import { mouldRowsOf } from './csv-moulds.ts';
import { orderRowsOf } from './csv-orders.ts';
import { cellPath, rowReader } from './csv-row.ts';
import { stockRowsOf } from './csv-stock.ts';

/** A CSV that was read as one of the tables; `columns` are its columns as the table calls them. */
export interface TableFile {
  kind: TableKind;
  csv: Csv;
  columns: string[];
  /** Cells whose letters were guessed, since the file is not in UTF-8; none where it is. */
  guessed: readonly string[];
}

export const MOST_ROWS = 5000;

const TABLES: Readonly<Record<TableKind, TableRows>> = {
  orders: orderRowsOf,
  moulds: mouldRowsOf,
  stock: stockRowsOf,
};

/** Columns are called the same in every file that is written, and found under their US spelling too. */
const AS_WRITTEN: Readonly<Record<string, string>> = { mold: 'mould' };

const plain = (name: string): string => {
  const column = name.trim().toLowerCase().replace(/\s+/g, ' ');
  return AS_WRITTEN[column] ?? column;
};

/** The table most of whose columns the file has; null when it has none of any. */
const kindOf = (columns: readonly string[]): TableKind | null => {
  const known = (kind: TableKind) => {
    const names = columnNames(kind);
    return columns.filter((column) => names.includes(column)).length + (columns.includes(names[0] ?? '') ? 9 : 0);
  };
  const best = TABLE_KINDS.reduce((one, other) => (known(other) > known(one) ? other : one));
  return known(best) > 0 ? best : null;
};

/** Rows above the names of the columns: a title, a date, a blank one. */
const MOST_ABOVE = 5;

interface Headed {
  read: CsvRead;
  /** The row in which the names of the columns stand. */
  headerRow: number;
}

const isHeaded = (read: CsvRead): boolean => {
  if (!read.ok) return false;
  const columns = read.csv.header.map(plain);
  const kind = kindOf(columns);
  return kind !== null && columns.includes(columnNames(kind)[0] ?? '');
};

/** The CSV from the row of its columns on, where there are some rows above it; as it is where none of its first rows has them. */
const headed = (text: string): Headed => {
  const asItIs = readCsv(text);
  if (isHeaded(asItIs)) return { read: asItIs, headerRow: 1 };
  let rest: string | null = separatorSaid(text).text;
  for (let above = 1; above <= MOST_ABOVE && rest !== null; above++) {
    rest = withoutFirstRow(rest);
    const read = rest === null ? asItIs : readCsv(rest, above + 1);
    if (isHeaded(read)) return { read, headerRow: above + 1 };
  }
  return { read: asItIs, headerRow: 1 };
};

const headerFaults = (kind: TableKind, columns: readonly string[], headerRow: number): Fault[] => {
  const known = columnNames(kind);
  const key = known[0] ?? '';
  const faults = columns.flatMap((column, index): Fault[] => {
    const path = cellPath(headerRow, column || String(index + 1));
    if (column === '') return [{ path, message: 'has no name' }];
    if (!known.includes(column))
      return [{ path, message: `is not known for ${kind}. The columns are: ${known.join(', ')}` }];
    return columns.indexOf(column) < index ? [{ path, message: 'is there twice' }] : [];
  });
  return columns.includes(key)
    ? faults
    : [...faults, { path: `row ${headerRow}`, message: `has no column ${quoted(key)}` }];
};

const lengthFaults = ({ header, rows }: Csv): Fault[] =>
  rows.flatMap(({ number, cells }): Fault[] =>
    cells.length === header.length
      ? []
      : [{ path: `row ${number}`, message: `has ${cells.length} cells, and there are ${header.length} columns` }],
  );

const GUESSED_SHOWN = 12;

/** Cells with other letters than English has, each once. */
const foreignCells = ({ rows }: Csv): string[] =>
  // biome-ignore lint/suspicious/noControlCharactersInRegex: all of ASCII
  [...new Set(rows.flatMap(({ cells }) => cells.filter((cell) => /[^\x00-\x7f]/.test(cell))))].slice(0, GUESSED_SHOWN);

/** Reads a CSV as the table its columns say it is; `isGuessed`: how its letters are written is a guess. */
export const readTable = (text: string, isGuessed = false): Outcome<TableFile> => {
  const { read, headerRow } = headed(text);
  if (!read.ok) return refuse(read.row === null ? 'file' : `row ${read.row}`, read.reason);
  const columns = read.csv.header.map(plain);
  const kind = kindOf(columns);
  if (kind === null)
    return refuse(
      'row 1',
      `has none of the columns known here. They begin with "${TABLE_KINDS.map((one) => COLUMNS[one][0]?.name).join('", "')}"`,
    );
  const faults = [...headerFaults(kind, columns, headerRow), ...lengthFaults(read.csv)];
  if (faults.length > 0) return { ok: false, faults };
  if (read.csv.rows.length === 0)
    return refuse('file', 'There are only the names of the columns, and no row under them.');
  if (read.csv.rows.length > MOST_ROWS)
    return refuse(
      'file',
      `There are ${read.csv.rows.length} rows, and ${MOST_ROWS} is the most that is read at once. Split it into several files.`,
    );
  return done({ kind, csv: read.csv, columns, guessed: isGuessed ? foreignCells(read.csv) : [] });
};

/** Puts the rows of a table over those that are there: known ones are changed, the others added, and none goes. */
export const applyRows = async (tx: Tx, { kind, csv, columns }: TableFile, now: string): Promise<Outcome<null>> => {
  const [held, yard] = [await storeRows(tx), await loadYardFile(tx, now)];
  const faults: Fault[] = [];
  const readers = csv.rows.map((row) => rowReader(csv, columns, row, faults));
  const rows = TABLES[kind](readers, { held, yard, now, dialect: csv.dialect });
  if (faults.length > 0) return { ok: false, faults };
  await putStoreRows(tx, held, { ...held, ...rows }, now);
  return done(null);
};
