import { sql } from 'drizzle-orm';
import type { SQLiteTable } from 'drizzle-orm/sqlite-core';
import { castingCuts, castingMaterials, castings } from '../tables/casting.ts';
import { castingSizes } from '../tables/casting-size.ts';
import { customers } from '../tables/customer.ts';
import { guesses, typedFigures } from '../tables/figure.ts';
import { yardHabits } from '../tables/habits.ts';
import { kitCuts, kitParts, kitPieces, kits } from '../tables/kit.ts';
import { kitSizes } from '../tables/kit-size.ts';
import { incomings, materials } from '../tables/material.ts';
import { mixes, mixMaterials } from '../tables/mix.ts';
import { mixWaters } from '../tables/mix-water.ts';
import { finishedPieces, mouldMakes, moulds, piecesInMould } from '../tables/mould.ts';
import { offcuts } from '../tables/offcut.ts';
import { orderLines, orders } from '../tables/order.ts';
import { piecesToMend } from '../tables/piece-to-mend.ts';
import { temperatureSteps } from '../tables/temperature.ts';
import { yardUnits } from '../tables/units.ts';
import { closedDays, extraWindows, workWindows } from '../tables/work.ts';
import { yards } from '../tables/yard.ts';
import type { Tx } from '../transaction.ts';
import { putRows, rowsOf } from './put-rows.ts';

/** All that a yard holds, but its plan and its log. */
const TABLES = {
  ...{
    yards,
    workWindows,
    closedDays,
    extraWindows,
    temperatureSteps,
    materials,
    offcuts,
    incomings,
    mixes,
    mixMaterials,
  },
  mixWaters,
  ...{ castings, castingMaterials, castingCuts, castingSizes, moulds, mouldMakes, piecesInMould, finishedPieces },
  ...{ kits, kitPieces, kitParts, kitCuts, kitSizes, customers, orders, orderLines },
  ...{ piecesToMend, yardUnits, yardHabits, guesses, typedFigures },
};
type Tables = typeof TABLES;

/** The rows of each table, in their places. */
export type StoreRows = { [K in keyof Tables]: Tables[K]['$inferSelect'][] };

type Wanted<R> = R extends { id: number } ? Omit<R, 'id'> & { id?: number } : R;

/** The same with rows that may have no number yet. Every other column is there. */
export type WantedRows = { [K in keyof Tables]: Wanted<Tables[K]['$inferSelect']>[] };

const NAMES = Object.keys(TABLES) as (keyof Tables)[];

/** All that a yard holds, a list of rows to a table, in their places; not its plan and not its log. */
export const storeRows = async (tx: Tx): Promise<StoreRows> => {
  const rows: Partial<Record<keyof Tables, unknown[]>> = {};
  for (const name of NAMES) rows[name] = await rowsOf(tx, TABLES[name] as SQLiteTable);
  return rows as StoreRows;
};

/** Makes the store hold just these rows. What stays as it is is not written. */
export const putStoreRows = async (tx: Tx, held: StoreRows, wanted: WantedRows): Promise<void> => {
  // Rows may refer to others that come after them; what counts is that all is there in the end.
  await tx.run(sql`pragma defer_foreign_keys = on`);
  for (const name of NAMES) await putRows(tx, TABLES[name] as SQLiteTable, held[name], wanted[name]);
};
