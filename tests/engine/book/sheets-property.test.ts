import { describe, expect, test } from 'vitest';
import type { PlanFile } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { record } from '../../../src/engine/book/carry-on.ts';
import { type SheetTaken, sheetsFor } from '../../../src/engine/book/sheets-cut.ts';
import { calendarOf } from '../../../src/engine/calendar/calendar.ts';
import { planYard } from '../../../src/engine/plan.ts';
import { audit } from '../../contract/audit-plan.mjs';
import { yardSeeds } from '../../support/property-seed.ts';
import { sheetYard } from '../../support/random-yard/sheet-yard.ts';
import { randomYard } from '../../support/random-yard.ts';
import { beforeFirstSession, tasksOf } from '../../support/work-by-plan.ts';
import { cutForOf, workOf } from '../../support/work-down.ts';

const meshOf = (yard: YardFile) => yard.materials.find(({ id }) => id === 'mesh')!;
const mm2 = ({ widthMm, lengthMm }: { widthMm: number; lengthMm: number }): number => widthMm * lengthMm;

/** All that is there of it, mm2. */
const areaThere = (yard: YardFile): number => {
  const { onHand, sheetWidthMm = 0, sheetLengthMm = 0, rests = [] } = meshOf(yard);
  return Math.floor(onHand) * sheetWidthMm * sheetLengthMm + rests.reduce((sum, one) => sum + mm2(one) * one.count, 0);
};

/** What is gone for good: all of what is cut, less what is kept of it. */
const areaGone = (yard: YardFile, sheets: readonly SheetTaken[]): number => {
  const { sheetWidthMm = 0, sheetLengthMm = 0 } = meshOf(yard);
  const kept = sheets.flatMap((sheet) => sheet.kept).reduce((sum, one) => sum + mm2(one), 0);
  return sheets.reduce((sum, { rest }) => sum + (rest ? mm2(rest) : sheetWidthMm * sheetLengthMm), 0) - kept;
};

const at = (yard: YardFile, minute: number): YardFile => ({
  ...yard,
  yard: { ...yard.yard, now: calendarOf(yard.yard.timeZone).instantText(minute) },
});

interface Tally {
  cuts: number;
  fromRests: number;
  carried: number;
  anew: number;
}

/** Records what a plan has, task by task, and looks at the book after each. */
const workDown = (start: YardFile, seed: number, tally: Tally): void => {
  let [yard, plan]: [YardFile, PlanFile | null] = [start, planYard(start, { effort: 'quick' })];
  for (let done = 0; done < 25 && plan; done++) {
    const [task] = tasksOf(plan);
    if (!task) return;
    yard = at(yard, Math.max(task.end, minuteOf(yard.yard.now)));
    const cutFor = cutForOf(task);
    const sheets = cutFor === null ? [] : sheetsFor(plan.sheets ?? [], cutFor);
    // What is bought by then is there: it is the sheets that are looked at.
    const whole = sheets.filter(({ rest }) => rest === undefined).length;
    const onHand = Math.max(meshOf(yard).onHand, whole);
    const held: YardFile = {
      ...yard,
      materials: yard.materials.map((one) => ({ ...one, onHand: one.id === 'mesh' ? onHand : 1000 })),
    };
    const recorded = record({ yard: held, plan }, workOf(task, plan, held));
    if (!recorded.ok) throw new Error(`seed ${seed}, ${task.what.kind}: ${recorded.faults[0]?.message}`);
    const { after } = recorded;
    const left = areaThere(held) - areaGone(held, sheets);
    expect(Math.abs(areaThere(after.yard) - left), `seed ${seed}`).toBeLessThan(1e-3);
    if (sheets.length > 0) {
      tally.cuts++;
      tally.fromRests += sheets.some(({ rest }) => rest) ? 1 : 0;
      tally.carried += after.plan ? 1 : 0;
      tally.anew += after.plan ? 0 : 1;
    }
    // Every rest that the plan goes on with is in the book, or is kept of something by then.
    const faults = after.plan ? audit(after.yard, after.plan).faults.filter((one) => one.includes('a sheet of')) : [];
    expect({ seed, faults }).toEqual({ seed, faults: [] });
    [yard, plan] = [after.yard, after.plan];
  }
};

describe('sheets, worked down as planned', { timeout: 60_000 }, () => {
  test('leave in the book to the millimetre what the plan keeps of them, and the plan goes on with it', () => {
    const tally: Tally = { cuts: 0, fromRests: 0, carried: 0, anew: 0 };
    for (const seed of yardSeeds(14)) {
      const yard = beforeFirstSession(sheetYard(randomYard(seed, seed % 2 ? 'small' : 'tight-rack'), seed));
      if (yard) workDown(yard, seed, tally);
    }
    expect(Math.min(tally.cuts, tally.fromRests, tally.carried), JSON.stringify(tally)).toBeGreaterThan(5);
  });
});
