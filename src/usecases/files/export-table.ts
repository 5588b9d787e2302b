import { type StoreRows, storeRows } from '../../../db/stores/store-rows.ts';
import { unitsOfYard } from '../../../db/stores/units-store.ts';
import { loadYardFile } from '../../../db/stores/yard-store.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { COMMAS, type Dialect, POINTS } from '../../engine/csv/dialect.ts';
import { type Cell, writeCsv } from '../../engine/csv/write-csv.ts';
import type { UseCaseContext } from '../core/context.ts';
import { columnNames, type TableKind } from './csv-columns.ts';
import { mouldCells } from './csv-moulds.ts';
import { orderCells } from './csv-orders.ts';
import { stockCells } from './csv-stock.ts';
import { fileName, type KeptFile } from './export-file.ts';

/** Whether the spreadsheet it is for writes 2.5 or 2,5. */
export type NumberSign = 'points' | 'commas';
const DIALECTS: Readonly<Record<NumberSign, Dialect>> = { points: POINTS, commas: COMMAS };

interface Ground {
  held: StoreRows;
  yard: YardFile;
  system: UnitSystem;
  dialect: Dialect;
}

const CELLS: Readonly<Record<TableKind, (ground: Ground) => Cell[][]>> = {
  orders: orderCells,
  moulds: mouldCells,
  stock: stockCells,
};

const breaksShown = ({ decimal }: Dialect): string => `from 40 at 20${decimal}5`;

/** Two rows to write over, in the yard's own names. */
const EXAMPLES: Readonly<Record<TableKind, (ground: Pick<Ground, 'yard' | 'system' | 'dialect'>) => Cell[][]>> = {
  orders: ({ yard: { kits, castings } }) => {
    const [first, second] = [...kits, ...castings].map(({ name }) => name);
    const [one, other] = [first ?? 'Planter', second ?? first ?? 'Panel 900'];
    return [
      [
        null,
        'School garden',
        '+44 1632 960 001',
        `2 x ${one}`,
        '2027-05-01',
        '2027-04-10',
        '2027-05-08',
        null,
        'not',
        'Gate is narrow',
      ],
      [null, 'Ann Example', null, `1 x ${one}; 3 x ${other}`, '2027-06-05', null, null, null, 'yes', null],
    ];
  },
  moulds: ({ yard: { castings } }) => {
    const [one = 'Panel 900', other] = castings.map(({ name }) => name);
    return [
      ['Example no. 1', one, one, 'clean', 0, 20, null],
      ['Example no. 2', other ? `${one}; ${other} (15)` : one, one, 'to be cleaned', 12, 20, 'Left rail is new'],
    ];
  },
  stock: ({ system, dialect }) => [
    ['Example mortar', 'bag', 12, 6, 3, 2, 21.5, 'Builders merchant', system === 'US' ? 55 : 25, breaksShown(dialect)],
    system === 'US'
      ? ['Example mesh', 'sq ft', 80, 64, 10, 0, null, null, null, null]
      : ['Example mesh', 'm2', 7.5, 6, 10, 0, null, null, null, null],
  ],
};

const groundOf = ({ database, now }: UseCaseContext, sign: NumberSign): Promise<Ground> =>
  database.read(async (tx) => ({
    held: await storeRows(tx),
    yard: await loadYardFile(tx, now),
    system: await unitsOfYard(tx),
    dialect: DIALECTS[sign],
  }));

/** One of the tables as a CSV. */
export const exportTable = async (context: UseCaseContext, kind: TableKind, sign: NumberSign): Promise<KeptFile> => {
  const ground = await groundOf(context, sign);
  const text = writeCsv(columnNames(kind), CELLS[kind](ground), ground.dialect);
  return { name: fileName(ground.yard.yard, context.now, `${kind}.csv`), text };
};

/** The names of the columns and two rows to write over. */
export const tableTemplate = async (context: UseCaseContext, kind: TableKind, sign: NumberSign): Promise<KeptFile> => {
  const ground = await groundOf(context, sign);
  return { name: `${kind}-template.csv`, text: writeCsv(columnNames(kind), EXAMPLES[kind](ground), ground.dialect) };
};
