import type { StoreRows, WantedRows } from '../../../db/stores/store-rows.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import type { Dialect } from '../../engine/csv/dialect.ts';
import type { RowReader } from './csv-row.ts';

/** What the rows of a table are put over. */
export interface TableGround {
  held: StoreRows;
  yard: YardFile;
  now: string;
  dialect: Dialect;
}

/** Reads the rows of a table: what they make of those that are there. Faults go to the readers. */
export type TableRows = (rows: readonly RowReader[], ground: TableGround) => Partial<WantedRows>;
