import { describe, expect, test } from 'vitest';
import type { Tx } from '../../../db/open.ts';
import { writeEntries } from '../../../db/stores/book-store.ts';
import { replaceYard } from '../../../db/stores/replace-yard.ts';
import { stockBook } from '../../../db/stores/stock-store.ts';
import { loadYardFile } from '../../../db/stores/yard-store.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { apply } from '../../../src/engine/book/apply.ts';
import { stockFaults } from '../../../src/engine/book/stock-sums.ts';
import { anyWork, isWorked } from '../../support/any-work.ts';
import { yardSeeds } from '../../support/property-seed.ts';
import { datedYard } from '../../support/random-yard/dated-stock.ts';
import { type Dice, diceOf } from '../../support/random-yard/dice.ts';
import { sheetYard } from '../../support/random-yard/sheet-yard.ts';
import { randomYard } from '../../support/random-yard.ts';
import { temporaryDatabase } from '../../support/temporary-database.ts';

/** Lots are sums of their lines, which come to the same in any order to less than a millionth. */
const summed = (yard: YardFile): YardFile => ({
  ...yard,
  materials: yard.materials.map((one) =>
    one.lots ? { ...one, lots: one.lots.map((lot) => ({ ...lot, quantity: Number(lot.quantity.toFixed(6)) })) } : one,
  ),
});

/** Records random work; what can be so is written to the store and applied to the yard file beside it. */
const workAnyhow = async (tx: Tx, start: YardFile, dice: Dice): Promise<{ beside: YardFile; written: number }> => {
  let [beside, written] = [start, 0];
  for (let act = 0; act < 8; act++) {
    const booked = await anyWork(beside, dice, tx);
    if (!booked.ok) continue;
    await writeEntries(tx, booked.entries);
    beside = apply(beside, booked.entries);
    written += booked.entries.length;
  }
  return { beside, written };
};

const YARDS = 440;
const PER_TEST = 110;
const chunks = Array.from({ length: YARDS / PER_TEST }, (_, i) => yardSeeds(PER_TEST, i * PER_TEST));

describe('what the store writes is what the book applies', { timeout: 120_000 }, () => {
  test.each(chunks.map((seeds) => ({ from: seeds[0]!, seeds })))('on random yards from $from on', async ({ seeds }) => {
    const database = await temporaryDatabase();
    let entries = 0;
    for (const seed of seeds.filter((one) => isWorked(randomYard(one))))
      await database.write(async (tx) => {
        const dated = datedYard(randomYard(seed), seed);
        const yard = seed % 3 === 0 ? sheetYard(dated, seed) : dated;
        await replaceYard(tx, yard);
        const loaded = await loadYardFile(tx, yard.yard.now);
        const { beside, written } = await workAnyhow(tx, loaded, diceOf(seed));
        expect(summed(await loadYardFile(tx, yard.yard.now)), `seed ${seed}`).toEqual(summed(beside));
        expect(stockFaults(await stockBook(tx), beside.materials), `seed ${seed}`).toEqual([]);
        entries += written;
      });
    expect(entries).toBeGreaterThan(3 * seeds.length);
  });
});
