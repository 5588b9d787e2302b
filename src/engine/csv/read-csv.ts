import { CsvError, parse } from 'csv-parse/sync';
import { type Dialect, dialectOf, separatorSaid } from './dialect.ts';
import { unguarded } from './formula.ts';

/** Cells of a CSV by row: `number` counts as a spreadsheet does, the first row being row 1. */
export interface CsvRow {
  number: number;
  cells: string[];
}

/** A CSV taken apart: how it is written, its column names as they stand there, and its rows without empty ones. */
export interface Csv {
  dialect: Dialect;
  header: string[];
  rows: CsvRow[];
}

/** A CSV, or why it is none: `row` as a spreadsheet counts, null where no single row is at fault. */
export type CsvRead = { ok: true; csv: Csv } | { ok: false; row: number | null; reason: string };

const REASONS: Readonly<Record<string, string>> = {
  CSV_QUOTE_NOT_CLOSED: 'A quotation mark is opened and never closed: the file may have been cut off.',
  CSV_INVALID_CLOSING_QUOTE:
    'Something stands behind a closing quotation mark. A quotation mark inside a cell is written twice.',
  INVALID_OPENING_QUOTE:
    'A quotation mark stands inside a cell that is not quoted. Put the cell in quotation marks, and write each mark inside it twice.',
};

const refusal = (error: unknown): CsvRead => {
  if (!(error instanceof CsvError)) throw error;
  const records = (error as { records?: unknown }).records;
  const reason = REASONS[error.code] ?? 'The row cannot be read as CSV.';
  return { ok: false, row: typeof records === 'number' ? records + 1 : null, reason };
};

/** Cells up to the last that says something, and at least so many: spreadsheets write empty columns behind what they have. */
const trimmed = (cells: readonly string[], least: number): string[] => {
  let length = cells.length;
  while (length > least && cells[length - 1]?.trim() === '') length -= 1;
  return cells.slice(0, length);
};

const isBlank = (cells: readonly string[]): boolean => cells.every((cell) => cell.trim() === '');

/**
 * Reads a CSV (RFC 4180) apart by commas, semicolons or tabs, whatever line ends it has, line ends inside quotes too. A row
 * with nothing in it is left out, and counts. Cells guarded against formulas come as they were. Refuses what is not closed
 * or quoted as the standard has it, with the row. Empty columns behind the last one with a name are left out, and so is a first
 * line that says what stands between the cells ("sep=;"). `first`: the number of the text's first row.
 *
 * Example: `readCsv('mould;note\n"900 no. 1";"left\nrail"\n')` has one row, number 2, with two cells.
 */
export const readCsv = (whole: string, first = 1): CsvRead => {
  const { said, text } = separatorSaid(whole);
  const dialect = said ?? dialectOf(text);
  try {
    const records: string[][] = parse(text, {
      delimiter: dialect.separator,
      relax_column_count: true,
      skip_empty_lines: false,
      bom: true,
    });
    const [names = [], ...rest] = records;
    const header = trimmed(names, 0);
    const rows = rest.map((cells, index) => ({
      number: first + index + 1,
      cells: trimmed(cells, header.length).map(unguarded),
    }));
    return {
      ok: true,
      csv: { dialect, header: header.map(unguarded), rows: rows.filter(({ cells }) => !isBlank(cells)) },
    };
  } catch (error) {
    return refusal(error);
  }
};
