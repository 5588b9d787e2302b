import { stringify } from 'csv-stringify/sync';
import type { Dialect } from './dialect.ts';
import { guarded } from './formula.ts';

/** A cell before it is written: numbers get the file's decimal sign, nothing is an empty cell. */
export type Cell = string | number | null;

const written = (cell: Cell, { decimal }: Dialect): string => {
  if (cell === null) return '';
  if (typeof cell === 'number') return String(cell).replace('.', decimal);
  return guarded(cell);
};

/**
 * A CSV (RFC 4180, CRLF line ends) that a spreadsheet opens as it is: no cell of it is taken for a formula. It begins
 * with a byte order mark, by which spreadsheets know UTF-8.
 *
 * Example: `writeCsv(['mould', 'note'], [['900 no. 1', '=1']], POINTS)` is "\uFEFFmould,note\r\n900 no. 1,'=1\r\n".
 */
export const writeCsv = (header: readonly string[], rows: readonly (readonly Cell[])[], dialect: Dialect): string =>
  stringify([header.map(guarded), ...rows.map((row) => row.map((cell) => written(cell, dialect)))], {
    delimiter: dialect.separator,
    record_delimiter: '\r\n',
    bom: true,
  });
