import { type Fault, pathText } from './fault.ts';

type Raw = Record<string, unknown>;

const isRecord = (x: unknown): x is Raw => typeof x === 'object' && x !== null && !Array.isArray(x);
const listOf = (holder: unknown, key: string): unknown[] => {
  const list = isRecord(holder) ? holder[key] : undefined;
  return Array.isArray(list) ? list : [];
};
const field = (x: unknown, key: string): unknown => (isRecord(x) ? x[key] : undefined);

const customerFaults = (input: unknown): Fault[] => {
  const faults: Fault[] = [];
  const known = new Set<unknown>();
  listOf(input, 'customers').forEach((customer, index) => {
    const id = field(customer, 'id');
    if (known.has(id)) faults.push({ path: pathText(['customers', index, 'id']), message: `${id} is given twice` });
    known.add(id);
  });
  listOf(input, 'orders').forEach((order, index) => {
    const id = field(order, 'customer');
    if (typeof id === 'number' && !known.has(id))
      faults.push({ path: pathText(['orders', index, 'customer']), message: `no customer with the number ${id}` });
  });
  return faults;
};

/** A line that was undone comes before the one that says so, is of the same material, and names no other itself. */
const isLineBefore = (book: readonly unknown[], index: number, of: number): boolean =>
  of < index &&
  field(book[of], 'ofLine') === undefined &&
  field(book[of], 'material') === field(book[index], 'material');

/** Lines of the stock book are of materials that the yard has, and name lines that are there. */
const stockBookFaults = (input: unknown): Fault[] => {
  const materials = new Set(listOf(input, 'materials').map((material) => field(material, 'id')));
  const book = listOf(input, 'stockBook');
  return book.flatMap((entry, index): Fault[] => {
    const [id, of] = [field(entry, 'material'), field(entry, 'ofLine')];
    if (typeof id === 'string' && !materials.has(id))
      return [{ path: pathText(['stockBook', index, 'material']), message: `no material named "${id}"` }];
    return typeof of !== 'number' || isLineBefore(book, index, of)
      ? []
      : [{ path: pathText(['stockBook', index, 'ofLine']), message: `line ${of} is none of that material before it` }];
  });
};

const moneyFaults = (input: unknown): Fault[] => {
  const orders = new Set(listOf(input, 'orders').map((order) => field(order, 'id')));
  const known = new Set<unknown>();
  return listOf(input, 'orderMoney').flatMap((entry, index): Fault[] => {
    const id = field(entry, 'order');
    const isTwice = known.has(id);
    known.add(id);
    const path = pathText(['orderMoney', index, 'order']);
    if (isTwice) return [{ path, message: `${id} is given twice` }];
    return typeof id !== 'string' || orders.has(id) ? [] : [{ path, message: `no order with the number ${id}` }];
  });
};

const toMendFaults = (input: unknown): Fault[] => {
  const castings = new Set(listOf(input, 'castings').map((casting) => field(casting, 'id')));
  return listOf(input, 'toMend').flatMap((piece, index): Fault[] => {
    const id = field(piece, 'casting');
    return typeof id !== 'string' || castings.has(id)
      ? []
      : [{ path: pathText(['toMend', index, 'casting']), message: `no casting named "${id}"` }];
  });
};

/** What work that is not recorded names, list by list: what kind of thing, and in which list that is. */
const NAMED: readonly [list: string, key: string, of: string][] = [
  ['batches', 'mix', 'mixes'],
  ['pours', 'mould', 'moulds'],
  ['pours', 'casting', 'castings'],
  ['coats', 'mould', 'moulds'],
  ['strips', 'mould', 'moulds'],
  ['orders', 'id', 'orders'],
  ['sticks', 'material', 'materials'],
  ['sheets', 'material', 'materials'],
];

const unansweredFaults = (input: unknown): Fault[] =>
  NAMED.flatMap(([list, key, of]) => {
    const known = new Set(listOf(input, of).map((one) => field(one, 'id')));
    return listOf(field(input, 'unanswered'), list).flatMap((entry, index): Fault[] => {
      const id = field(entry, key);
      return typeof id !== 'string' || known.has(id)
        ? []
        : [{ path: pathText(['unanswered', list, index, key]), message: `there is no "${id}" among the ${of}` }];
    });
  });

const supplierFaults = (input: unknown): Fault[] => {
  const known = new Set<unknown>();
  return listOf(input, 'suppliers').flatMap((one, index): Fault[] => {
    const name = field(one, 'name');
    if (known.has(name)) return [{ path: pathText(['suppliers', index, 'name']), message: `${name} is given twice` }];
    known.add(name);
    return [];
  });
};

/** Parts of the set of one mould: each is said once, and a mould that is in use has none that is broken. */
const partFaults = (mould: unknown, index: number): Fault[] => {
  const known = new Set<unknown>();
  const isOut = ['damaged', 'retired'].includes(String(field(mould, 'condition')));
  return listOf(mould, 'parts').flatMap((entry, place): Fault[] => {
    const part = field(entry, 'part');
    const isTwice = known.has(part);
    known.add(part);
    const at = ['moulds', index, 'parts', place];
    if (isTwice) return [{ path: pathText([...at, 'part']), message: `${part} is given twice` }];
    return isOut || field(entry, 'condition') !== 'broken'
      ? []
      : [{ path: pathText([...at, 'condition']), message: 'no part of a mould that is in use is broken' }];
  });
};

/** Names given twice among figures: each says one thing. */
const figureFaults = (input: unknown, key: 'guesses' | 'typed'): Fault[] => {
  const known = new Set<string>();
  return listOf(input, key).flatMap((entry, index): Fault[] => {
    const name = ['kind', 'id', 'figure'].map((part) => String(field(entry, part))).join(' ');
    if (known.has(name)) return [{ path: pathText([key, index]), message: 'is given twice' }];
    known.add(name);
    return [];
  });
};

const logFaults = (input: unknown): Fault[] => {
  const log = field(input, 'log');
  const length = listOf(log, 'changes').length;
  const faults: Fault[] = [];
  const check = (list: 'changes' | 'notices' | 'plannedAnew', key: string) =>
    listOf(log, list).forEach((entry, index) => {
      const place = field(entry, key);
      if (typeof place === 'number' && place >= length)
        faults.push({ path: pathText(['log', list, index, key]), message: `the log has no entry ${place}` });
    });
  check('changes', 'undoneBy');
  check('notices', 'change');
  check('plannedAnew', 'change');
  const seen = new Set<unknown>();
  listOf(log, 'plannedAnew').forEach((entry, index) => {
    const change = field(entry, 'change');
    if (seen.has(change))
      faults.push({ path: pathText(['log', 'plannedAnew', index, 'change']), message: `${change} is given twice` });
    seen.add(change);
  });
  return faults;
};

/**
 * The faults of an archive beyond those of a yard file that no single field shows: a customer or casting that is not
 * there, one given twice, a place beyond the end of the log. Works on the raw input and throws at none; what has a
 * wrong shape is left to the schema.
 *
 * Example: `archiveReferenceFaults({ orders: [{ customer: 3 }] })` is `[{ path: 'orders[0].customer', message: 'no
 * customer with the number 3' }]`.
 */
export const archiveReferenceFaults = (input: unknown): Fault[] => [
  ...customerFaults(input),
  ...toMendFaults(input),
  ...stockBookFaults(input),
  ...moneyFaults(input),
  ...supplierFaults(input),
  ...listOf(input, 'moulds').flatMap(partFaults),
  ...unansweredFaults(input),
  ...figureFaults(input, 'guesses'),
  ...figureFaults(input, 'typed'),
  ...logFaults(input),
];
