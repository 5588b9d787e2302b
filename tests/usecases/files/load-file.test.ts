import { describe, expect, test } from 'vitest';
import { loadYardFile, revision } from '../../../db/stores/yard-store.ts';
import type { YardFileInput } from '../../../shared/yard-file.ts';
import { undoChange } from '../../../src/usecases/changes/undo-change.ts';
import { loadFile, readUpload, tryFile } from '../../../src/usecases/files/load-file.ts';
import { doneOf, refusalOf } from '../../support/outcomes.ts';
import { smallYard } from '../../support/small-yard.ts';
import { yardContext } from '../../support/yard-context.ts';

const bytes = (text: string) => new TextEncoder().encode(text);
const upload = (text: string, now: string) => doneOf(readUpload(bytes(text), now));
const yardText = (changes: Partial<YardFileInput>) => JSON.stringify(smallYard(changes));
const STOCK = 'material,in the yard\nFast-setting mortar,7\n';

const begun = async () => {
  const context = await yardContext();
  const yard = () => context.database.read((tx) => loadYardFile(tx, context.now));
  const mortar = async () => (await yard()).materials.find(({ id }) => id === 'mortar')?.onHand;
  return { context, yard, mortar };
};

describe('a file', () => {
  test('is tried without a change, and read in as it was tried', async () => {
    const { context, mortar } = await begun();
    const file = upload(STOCK, context.now);
    const tried = doneOf(await tryFile(context, file));
    expect(tried).toMatchObject({ kind: 'stock', moved: [], today: '2027-04-08' });
    expect(await mortar()).toBe(20);
    const { value, words } = doneOf(await loadFile(context, file, tried.revision));
    expect(value.differences).toEqual(tried.differences);
    expect(words).toBe('Stock loaded from a file');
    expect(await mortar()).toBe(7);
  });

  test('undone, all is as it was', async () => {
    const { context, yard } = await begun();
    const before = await yard();
    const file = upload(yardText({ orders: [] }), context.now);
    const { change } = doneOf(await loadFile(context, file));
    expect((await yard()).orders).toEqual([]);
    doneOf(await undoChange(context, change));
    expect(await yard()).toEqual(before);
  });

  test('is refused once the yard is another than it was tried on', async () => {
    const { context, mortar } = await begun();
    const seen = await context.database.read(revision);
    doneOf(await loadFile(context, upload(yardText({ orders: [] }), context.now)));
    expect(refusalOf(await loadFile(context, upload(STOCK, context.now), seen))).toMatch(/^revision: /);
    expect(await mortar()).toBe(20);
  });

  test('that says what is so already is refused', async () => {
    const { context } = await begun();
    expect(refusalOf(await loadFile(context, upload(yardText({}), context.now)))).toMatch(/^same: /);
  });

  // 8 digits of lead days fit a cell, but no yard file holds more than 7,300.
  test('is refused whole where the yard would be none', async () => {
    const { context, yard } = await begun();
    const before = await yard();
    const file = upload('material,in the yard,lead days\nFast-setting mortar,7,99999999\n', context.now);
    expect(refusalOf(await loadFile(context, file))).toBe('row 2, column lead days: is more than 7,300');
    expect(await yard()).toEqual(before);
  });
});

test('what is neither a yard nor a table is not read', () => {
  expect(refusalOf(readUpload(bytes('{"format":"other"}'), '2027-04-08T09:00:00Z'))).toMatch(/format/);
  expect(refusalOf(readUpload(bytes(''), '2027-04-08T09:00:00Z'))).not.toBe('done');
});

/* Version 1 had one date an order: the one promised, or else the one asked for. */
describe('a yard file of an earlier version, with one date for each order', () => {
  const { due: _promised, ...order } = smallYard().orders[0]!;
  const DAY = '2027-05-01';
  const file = (version: 1 | 2) => JSON.stringify({ ...smallYard({ orders: [{ ...order, due: DAY }] }), version });
  const read = async (version: 1 | 2, held: Partial<YardFileInput['orders'][number]>) => {
    const context = await yardContext(smallYard({ orders: [{ ...order, ...held }] }));
    const tried = doneOf(await tryFile(context, upload(file(version), context.now)));
    doneOf(await loadFile(context, upload(file(version), context.now)));
    const [now] = (await context.database.read((tx) => loadYardFile(tx, context.now))).orders;
    return { due: now?.due, wanted: now?.wanted, told: tried.takenAsPromised };
  };
  const other = { lines: [{ casting: 'panel-900', quantity: 3 }] };

  test('comes in as promised where nothing is known of it, and the look at it says so', async () => {
    expect(await read(1, other)).toEqual({ due: DAY, wanted: undefined, told: [order.id] });
  });

  test('stays a date that was asked for where it is known to be one', async () => {
    expect(await read(1, { ...other, wanted: DAY })).toEqual({ due: undefined, wanted: DAY, told: [] });
  });

  test('of the present version is promised, without a word', async () => {
    expect(await read(2, { ...other, wanted: DAY })).toEqual({ due: DAY, wanted: undefined, told: [] });
  });
});
