import { loadYardFile } from '../../../db/stores/yard-store.ts';
import { today, type UseCaseContext } from '../core/context.ts';
import { COLUMNS, TABLE_KINDS } from './csv-columns.ts';
import { MOST_ROWS } from './csv-table.ts';

/** What the page of files says of the yard and of the tables. */
export const showFiles = async ({ database, now }: UseCaseContext) => {
  const { yard } = await database.read((tx) => loadYardFile(tx, now));
  return {
    yardName: yard.name,
    today: today(yard.timeZone, now),
    tables: TABLE_KINDS.map((kind) => ({ kind, columns: COLUMNS[kind] })),
    mostRows: MOST_ROWS,
  };
};
