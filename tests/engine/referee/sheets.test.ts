import { describe, expect, it } from 'vitest';
import type { PlanFile, PlanSheet } from '../../../shared/plan.ts';
import type { YardFileInput } from '../../../shared/yard-file.ts';
import { planYard } from '../../../src/engine/plan.ts';
import { refereePlan } from '../../../src/engine/referee.ts';
import { audit } from '../../contract/audit-plan.mjs';
import { handMadePlan, handMadeYard } from '../../support/hand-made-plan.ts';
import { diceOf } from '../../support/random-yard/dice.ts';
import { sheetYard } from '../../support/random-yard/sheet-yard.ts';
import { randomYard } from '../../support/random-yard.ts';

/** Each of the two panels has a piece of 175 by 875 in it: 4 by 18 openings of a sheet of 20 by 40. */
const inSheets = (yard: YardFileInput): void => {
  const { leadDays: _days, ...mesh } = yard.materials[1]!;
  yard.materials[1] = { ...mesh, onHand: 1, inSheets: true, sheetWidthMm: 1020, sheetLengthMm: 2000, meshMm: 50 };
  for (const casting of yard.castings) {
    casting.perPiece = casting.perPiece.filter(({ material }) => material !== 'mesh');
    casting.sheets = [{ material: 'mesh', widthMm: 175, lengthMm: 875, count: 1 }];
  }
};

const at = (xMm: number, yMm: number) => ({ widthMm: 175, lengthMm: 875, xMm, yMm });
/** Side by side from the corner; beside them 12.4 openings are left, the last one cut off by the edge, and 22 below. */
const SHEET: PlanSheet = {
  ...{ material: 'mesh', for: 'B1', pieces: [at(0, 0), at(200, 0)] },
  kept: [
    { widthMm: 620, lengthMm: 900, xMm: 400, yMm: 0 },
    { widthMm: 1020, lengthMm: 1100, xMm: 0, yMm: 900 },
  ],
};
const [BESIDE, BELOW] = SHEET.kept;

type Change = (yard: YardFileInput) => void;
const nothing: Change = () => {};
const rest =
  (widthMm: number, lengthMm: number): Change =>
  (yard) =>
    Object.assign(yard.materials[1]!, { onHand: 0, rests: [{ widthMm, lengthMm, count: 1 }] });
const mayNotTurn: Change = (yard) => {
  for (const { sheets } of yard.castings) for (const one of sheets!) one.mayTurn = false;
};

/** The rules that a plan with these sheets breaks, alike for the referee and the independent check. */
const rulesOf = (sheets: PlanSheet[], change: Change): string[] => {
  const yard = handMadeYard((input) => {
    inSheets(input);
    change(input);
  });
  const plan: PlanFile = { ...handMadePlan(), sheets };
  const rules = [...new Set(refereePlan(yard, plan).map(({ rule }) => rule))];
  expect(rules).toEqual([...new Set(audit(yard, plan).faults.map((fault) => fault.split(' ')[0]!))]);
  return rules;
};

describe('sheets that are cut', () => {
  it.each<[string, PlanSheet[], Change]>([
    ['a whole one', [SHEET], nothing],
    ['with nothing kept of it', [{ ...SHEET, kept: [] }], nothing],
    ['a rest that is large enough', [{ ...SHEET, rest: { widthMm: 410, lengthMm: 900 }, kept: [] }], rest(410, 900)],
    [
      'turned',
      [
        {
          ...SHEET,
          pieces: [
            { ...at(0, 0), isTurned: true },
            { ...at(0, 200), isTurned: true },
          ],
          kept: [],
        },
      ],
      nothing,
    ],
    [
      'a piece of a rest that was kept of it just before',
      [
        { ...SHEET, pieces: [at(0, 0)], kept: [{ widthMm: 820, lengthMm: 900, xMm: 200, yMm: 0 }] },
        { ...SHEET, rest: { widthMm: 820, lengthMm: 900 }, pieces: [at(600, 0)], kept: [] },
      ],
      nothing,
    ],
  ])('are in order: %s', (_, sheets, change) => {
    expect(rulesOf(sheets, change)).toEqual([]);
  });

  it.each<[string, PlanSheet[], Change]>([
    ['a sheet that is not there', [SHEET], (yard) => Object.assign(yard.materials[1]!, { onHand: 0 })],
    ['a share of one', [SHEET], (yard) => Object.assign(yard.materials[1]!, { onHand: 0.999 })],
    ['enough of it, in rests that are too small', [SHEET], rest(1000, 899)],
    ['a piece missing', [{ ...SHEET, pieces: [at(0, 0)] }], nothing],
    ['a piece too many', [{ ...SHEET, pieces: [...SHEET.pieces, at(400, 0)], kept: [BELOW!] }], nothing],
    ['a piece that nobody needs', [{ ...SHEET, pieces: [at(0, 0), { ...at(200, 0), lengthMm: 876 }] }], nothing],
    ['two pieces on top of each other', [{ ...SHEET, pieces: [at(0, 0), at(150, 0)] }], nothing],
    ['what is kept, on top of a piece', [{ ...SHEET, kept: [{ ...BESIDE!, xMm: 350, widthMm: 670 }] }], nothing],
    ['a piece over the edge', [{ ...SHEET, pieces: [at(0, 0), at(850, 0)], kept: [BELOW!] }], nothing],
    ['a piece over the last wire', [{ ...SHEET, rest: { widthMm: 399, lengthMm: 900 }, kept: [] }], rest(399, 900)],
    ['more kept than is there', [{ ...SHEET, kept: [{ ...BELOW!, lengthMm: 1150 }] }], nothing],
    ['a piece between wires', [{ ...SHEET, pieces: [at(0, 0), at(210, 0)], kept: [BELOW!] }], nothing],
    ['a rest cut between wires', [{ ...SHEET, kept: [{ ...BESIDE!, widthMm: 610 }] }], nothing],
    ['a rest that the yard has not', [{ ...SHEET, rest: { widthMm: 410, lengthMm: 900 }, kept: [] }], rest(420, 900)],
    [
      'a rest that is cut twice',
      [at(0, 0), at(200, 0)].map((piece) => ({
        ...{ ...SHEET, rest: { widthMm: 410, lengthMm: 900 } },
        ...{ pieces: [piece], kept: [] },
      })),
      rest(410, 900),
    ],
    [
      'a piece that may not turn, turned',
      [{ ...SHEET, pieces: [at(0, 0), { ...at(200, 0), isTurned: true }], kept: [BELOW!] }],
      mayNotTurn,
    ],
    [
      'parts that no cut from edge to edge takes apart',
      [
        {
          ...SHEET,
          pieces: [at(0, 0), { ...at(200, 0), isTurned: true }],
          // The piece that lies is 900 by 200; round a hole of 700 by 700 the four lie like a pinwheel.
          kept: [
            { widthMm: 200, lengthMm: 900, xMm: 900, yMm: 200 },
            { widthMm: 900, lengthMm: 200, xMm: 0, yMm: 900 },
          ],
        },
      ],
      (yard) => Object.assign(yard.materials[1]!, { sheetWidthMm: 1100 }),
    ],
  ])('are found out by both: %s', (_, sheets, change) => {
    expect(rulesOf(sheets, change)).toEqual(['R10']);
  });

  it('are in a form, and of a material in sheets', () => {
    expect(rulesOf([{ ...SHEET, pieces: [] }], nothing)).toEqual(['R0']);
    expect(rulesOf([{ ...SHEET, for: 'B9' }], nothing)).toEqual(['R0']);
    expect(rulesOf([{ ...SHEET, material: 'mortar' }], nothing)).toEqual(['R0']);
  });
});

describe('plans of yards with mesh in sheets', { timeout: 60_000 }, () => {
  it('cut, keep and buy so that both find nothing', () => {
    const seen = { whole: 0, rests: 0, buys: 0 };
    for (const seed of [1, 2, 4, 7, 9, 11, 14, 18]) {
      const yard = sheetYard(randomYard(seed, seed % 2 ? 'small' : 'tight-rack'), seed);
      const plan = planYard(yard, { effort: 'quick' });
      const faults = [...audit(yard, plan).faults, ...refereePlan(yard, plan).map(({ message }) => message)];
      expect({ seed, faults }).toEqual({ seed, faults: [] });
      seen.whole += plan.sheets?.filter((one) => !one.rest).length ?? 0;
      seen.rests += plan.sheets?.filter((one) => one.rest).length ?? 0;
      seen.buys += plan.buys.filter(({ material }) => material === 'mesh').length;
    }
    expect(Math.min(...Object.values(seen)), JSON.stringify(seen)).toBeGreaterThan(0);
  });

  it('are judged alike where a cut is spoilt', () => {
    let rejected = 0;
    for (let seed = 1; seed <= 24; seed++) {
      const yard = sheetYard(randomYard(seed, 'small'), seed);
      const plan = structuredClone(planYard(yard, { effort: 'quick' }));
      if (!plan.sheets) continue;
      const dice = diceOf(seed);
      const sheet = dice.pick(plan.sheets);
      const part = dice.pick([...sheet.pieces, ...sheet.kept]);
      const step = yard.materials.find(({ id }) => id === 'mesh')!.meshMm ?? 1;
      const key = dice.pick(['xMm', 'yMm', 'widthMm', 'lengthMm'] as const);
      part[key] = Math.max(0, part[key] + dice.pick([-1, 1, 4]) * step);
      const faults = audit(yard, plan).faults;
      expect({ seed, inOrder: refereePlan(yard, plan).length === 0 }).toEqual({ seed, inOrder: faults.length === 0 });
      if (faults.length > 0) rejected++;
    }
    expect(rejected).toBeGreaterThan(5);
  });
});
