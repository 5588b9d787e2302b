import { loadYardFile } from '../../../db/stores/yard-store.ts';
import { today, type UseCaseContext } from '../core/context.ts';
import type { PageHead } from '../core/page-parts.ts';
import { COLUMNS, type Column, TABLE_KINDS, type TableKind } from './csv-columns.ts';
import { MOST_ROWS } from './csv-table.ts';

/** A table that can be read in and written out, and what its columns are called. */
export interface TableOffered {
  kind: TableKind;
  columns: readonly Column[];
}

/** What the page of files says of the yard and of the tables. */
export interface FilesModel extends PageHead {
  tables: readonly TableOffered[];
  /** More rows than this are not read in at once. */
  mostRows: number;
}

/** The tables there are, for a yard. It is read without its plan. */
export const showFiles = async ({ database, now }: UseCaseContext): Promise<FilesModel> => {
  const { yard } = await database.read((tx) => loadYardFile(tx, now));
  return {
    yardName: yard.name,
    today: today(yard.timeZone, now),
    tables: TABLE_KINDS.map((kind) => ({ kind, columns: COLUMNS[kind] })),
    mostRows: MOST_ROWS,
  };
};
