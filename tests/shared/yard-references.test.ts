import { describe, expect, test } from 'vitest';
import type { YardFileInput } from '../../shared/yard-file.ts';
import { referenceFaults } from '../../shared/yard-references.ts';
import { planYard } from '../../src/engine/plan.ts';
import { begunPlan, begunYard } from '../support/hand-made-begun.ts';
import { smallYard } from '../support/small-yard.ts';

const yard = smallYard({
  orders: [{ id: '27-001', lines: [{ kit: 'pair', quantity: 3 }] }],
  inMould: [{ mould: '900 no. 1', casting: 'panel-900', filledAt: '2027-04-03T11:00:00+01:00' }],
  finished: [{ casting: 'panel-900', count: 1 }],
  incoming: [{ material: 'mortar', quantity: 1, on: '2027-04-12' }],
  castings: [
    {
      ...smallYard().castings[0]!,
      perPiece: [{ material: 'mortar', quantity: 0.1 }],
      cuts: [{ material: 'rod', lengthMm: 100, count: 1 }],
    },
  ],
});
const plan = planYard(yard, { effort: 'quick' });
const whole = { ...yard, keep: { batches: plan.batches, pours: plan.pours } };
type Change = (yard: YardFileInput & { keep: NonNullable<YardFileInput['keep']> }) => unknown;

const faultsOf = (change: Change) => {
  const changed = structuredClone(whole) as Parameters<Change>[0];
  change(changed);
  return referenceFaults(changed).map((f) => `${f.path}: ${f.message}`);
};

test('the file it starts from has none, and keeps a batch', () => {
  expect(referenceFaults(whole)).toEqual([]);
  expect(plan.pours.length).toBeGreaterThan(0);
});

describe('what is not there', () => {
  test.each<[string, Change]>([
    ['incoming[0].material: no material named "x"', (y) => Object.assign(y.incoming[0]!, { material: 'x' })],
    [
      'mixes[0].perBag[0].material: no material named "x"',
      (y) => Object.assign(y.mixes[0]!.perBag[0]!, { material: 'x' }),
    ],
    ['castings[0].mix: no mix named "x"', (y) => Object.assign(y.castings[0]!, { mix: 'x' })],
    [
      'castings[0].perPiece[0].material: no material named "x"',
      (y) => Object.assign(y.castings[0]!.perPiece[0]!, { material: 'x' }),
    ],
    [
      'castings[0].cuts[0].material: no material named "x"',
      (y) => Object.assign(y.castings[0]!.cuts[0]!, { material: 'x' }),
    ],
    [
      'moulds[1].makes[0].casting: no casting named "x"',
      (y) => Object.assign(y.moulds[1]!.makes[0]!, { casting: 'x' }),
    ],
    ['moulds[1].setFor: no casting named "x"', (y) => Object.assign(y.moulds[1]!, { setFor: 'x' })],
    ['kits[0].pieces[0].casting: no casting named "x"', (y) => Object.assign(y.kits[0]!.pieces[0]!, { casting: 'x' })],
    ['kits[0].parts[0].material: no material named "x"', (y) => y.kits[0]!.parts.push({ material: 'x', quantity: 1 })],
    ['kits[0].cuts[0].material: no material named "x"', (y) => Object.assign(y.kits[0]!.cuts[0]!, { material: 'x' })],
    ['finished[0].casting: no casting named "x"', (y) => Object.assign(y.finished[0]!, { casting: 'x' })],
    ['finished[0].order: no order named "x"', (y) => Object.assign(y.finished[0]!, { order: 'x' })],
    ['inMould[0].mould: no mould named "x"', (y) => Object.assign(y.inMould[0]!, { mould: 'x' })],
    ['inMould[0].casting: no casting named "x"', (y) => Object.assign(y.inMould[0]!, { casting: 'x' })],
    ['inMould[0].order: no order named "x"', (y) => Object.assign(y.inMould[0]!, { order: 'x' })],
    ['orders[0].lines[0].kit: no kit named "x"', (y) => Object.assign(y.orders[0]!.lines[0]!, { kit: 'x' })],
    [
      'orders[0].lines[0].casting: no casting named "x"',
      (y) => Object.assign(y.orders[0]!.lines[0]!, { casting: 'x' }),
    ],
    [
      'orders[0].lines[0].material: no material named "x"',
      (y) => Object.assign(y.orders[0]!.lines[0]!, { material: 'x' }),
    ],
    ['keep.batches[0].mix: no mix named "x"', (y) => Object.assign(y.keep.batches[0]!, { mix: 'x' })],
    [
      `keep.batches[0].pours[${plan.batches[0]!.pours.length}]: no pour named "x"`,
      (y) => y.keep.batches[0]!.pours.push('x'),
    ],
    ['keep.pours[0].batch: no batch named "x"', (y) => Object.assign(y.keep.pours[0]!, { batch: 'x' })],
    ['keep.pours[0].mould: no mould named "x"', (y) => Object.assign(y.keep.pours[0]!, { mould: 'x' })],
    ['keep.pours[0].casting: no casting named "x"', (y) => Object.assign(y.keep.pours[0]!, { casting: 'x' })],
    ['keep.pours[0].order: no order named "x"', (y) => Object.assign(y.keep.pours[0]!, { order: 'x' })],
  ])('%s', (fault, change) => expect(faultsOf(change)).toContain(fault));
});

describe('what is there twice', () => {
  test.each<['materials' | 'mixes' | 'castings' | 'moulds' | 'kits' | 'orders', string]>([
    ['materials', 'mortar'],
    ['mixes', 'thin'],
    ['castings', 'panel-900'],
    ['moulds', '900 no. 1'],
    ['kits', 'pair'],
    ['orders', '27-001'],
  ])('an id among %s', (list, id) => {
    const faults = faultsOf((y) => (y[list] as { id: string }[]).push({ ...y[list][0]! }));
    expect(faults).toEqual([`${list}[${whole[list].length}].id: "${id}" is given twice`]);
  });

  test('a mould among the filled ones, a casting among what a mould makes, a fixed batch', () => {
    expect(faultsOf((y) => y.inMould.push(y.inMould[0]!))).toEqual([
      'inMould[1].mould: "900 no. 1" is in this list twice',
    ]);
    expect(faultsOf((y) => y.moulds[0]!.makes.push({ casting: 'panel-900' }))).toEqual([
      'moulds[0].makes[1].casting: "panel-900" is given twice',
    ]);
    expect(faultsOf((y) => y.keep.batches.push(y.keep.batches[0]!))).toEqual([
      `keep.batches[${plan.batches.length}].id: "${plan.batches[0]!.id}" is given twice`,
    ]);
  });
});

describe('what does not go together', () => {
  const sheetPiece = (widthMm: number, lengthMm: number) => ({
    ...{ material: 'mortar', widthMm, lengthMm },
    count: 1,
  });
  const addLong: Change = (y) => y.castings.push({ ...y.castings[0]!, id: 'long' });
  test.each<[string, Change]>([
    [
      'mixes[0].maxBags: 1.25 is no multiple of bagStep 0.5',
      (y) => Object.assign(y.mixes[0]!, { bagStep: 0.5, maxBags: 1.25 }),
    ],
    ['mixes[0].maxBags: 1.5 is no multiple of bagStep 1', (y) => Object.assign(y.mixes[0]!, { maxBags: 1.5 })],
    [
      'castings[0].kg: 27.6 kg is more than the largest batch of "thin" (27.5 kg)',
      (y) => Object.assign(y.castings[0]!, { kg: 27.6 }),
    ],
    [
      'castings[0].fillMinutes: 21 min is longer than the working time of "thin" (20 min)',
      (y) => Object.assign(y.castings[0]!, { fillMinutes: 21 }),
    ],
    [
      'materials[0].offcuts: "mortar" has no stickMm that they are left of',
      (y) => Object.assign(y.materials[0]!, { offcuts: [{ lengthMm: 500, count: 1 }] }),
    ],
    [
      'materials[0].sheetWidthMm: a sheet has a length too',
      (y) => Object.assign(y.materials[0]!, { sheetWidthMm: 1000 }),
    ],
    [
      'materials[0].sheetLengthMm: a sheet has a width too',
      (y) => Object.assign(y.materials[0]!, { sheetLengthMm: 1000 }),
    ],
    ['materials[0].meshMm: there are no sheets that it is of', (y) => Object.assign(y.materials[0]!, { meshMm: 50 })],
    [
      'materials[0].rests: there are no sheets that it is of',
      (y) => Object.assign(y.materials[0]!, { rests: [{ widthMm: 500, lengthMm: 500, count: 1 }] }),
    ],
    [
      'materials[0].inSheets: there are no sheets that it is in',
      (y) => Object.assign(y.materials[0]!, { inSheets: true }),
    ],
    [
      'castings[0].perPiece[0].material: "mortar" is cut for it from sheets, and would be taken twice',
      (y) => {
        Object.assign(y.materials[0]!, { inSheets: true, sheetWidthMm: 1000, sheetLengthMm: 2000 });
        const perPiece = [{ material: 'mortar', quantity: 0.15 }];
        Object.assign(y.castings[0]!, { perPiece, sheets: [sheetPiece(175, 875)] });
      },
    ],
    [
      'materials[0].lots: "mortar" is cut from sheets, which have no date',
      (y) => {
        const sheets = { inSheets: true, sheetWidthMm: 1000, sheetLengthMm: 2000 };
        Object.assign(y.materials[0]!, { ...sheets, onHand: 5, lots: [{ quantity: 1, useBy: '2027-05-01' }] });
      },
    ],
    [
      'castings[0].sheets[0].material: "mortar" has no sheets to cut from',
      (y) => Object.assign(y.castings[0]!, { sheets: [sheetPiece(175, 875)] }),
    ],
    [
      'castings[0].sheets[1]: it goes on no sheet of "mortar"',
      (y) => {
        Object.assign(y.materials[0]!, { sheetWidthMm: 1000, sheetLengthMm: 2020, meshMm: 50 });
        // 2001 to 2020 would go on by its length, but takes 41 openings of 40; 1001 goes on turned.
        Object.assign(y.castings[0]!, { sheets: [sheetPiece(1001, 900), sheetPiece(900, 2001)] });
      },
    ],
    [
      'castings[0].sheets[0]: it goes on no sheet of "mortar"',
      (y) => {
        Object.assign(y.materials[0]!, { sheetWidthMm: 1000, sheetLengthMm: 2000 });
        Object.assign(y.castings[0]!, { sheets: [{ ...sheetPiece(1001, 900), mayTurn: false }] });
      },
    ],
    [
      'kits[0].cuts[0].material: "mortar" has no stickMm to cut from',
      (y) => Object.assign(y.kits[0]!.cuts[0]!, { material: 'mortar' }),
    ],
    [
      'kits[0].cuts[0].lengthMm: 3001 mm is longer than a stick of "rod" (3000 mm)',
      (y) => Object.assign(y.kits[0]!.cuts[0]!, { lengthMm: 3001 }),
    ],
    [
      'moulds[1].setFor: "long" is not among what this mould makes',
      (y) => {
        addLong(y);
        Object.assign(y.moulds[1]!, { setFor: 'long' });
      },
    ],
    [
      'inMould[0].casting: mould "900 no. 1" does not make "long"',
      (y) => {
        addLong(y);
        Object.assign(y.inMould[0]!, { casting: 'long' });
      },
    ],
    [
      'inMould[0].filledAt: is after now',
      (y) => Object.assign(y.inMould[0]!, { filledAt: '2027-04-08T09:01:00+01:00' }),
    ],
  ])('%s', (fault, change) => expect(faultsOf(change)).toEqual([fault]));

  test.each<[string, Change]>([
    ['bags in tenths', (y) => Object.assign(y.mixes[0]!, { bagStep: 0.1, maxBags: 1.7 })],
    ['the largest batch in one piece', (y) => Object.assign(y.castings[0]!, { kg: 27.5 })],
    ['a fill as long as the working time', (y) => Object.assign(y.castings[0]!, { fillMinutes: 20 })],
    ['a whole stick', (y) => Object.assign(y.kits[0]!.cuts[0]!, { lengthMm: 3000 })],
    [
      'filled this very minute, by another clock',
      (y) => Object.assign(y.inMould[0]!, { filledAt: '2027-04-08T08:00:00Z' }),
    ],
    ['a damaged mould that holds a piece', (y) => Object.assign(y.moulds[0]!, { condition: 'damaged' })],
  ])('%s is no fault', (_, change) => expect(faultsOf(change)).toEqual([]));
});

test('what has no shape at all is left to the check of shapes', () => {
  for (const input of [null, 7, 'yard', [], {}, { moulds: 'none' }, { moulds: [3], keep: [] }])
    expect(referenceFaults(input)).toEqual([]);
});

describe('work under way', () => {
  const { yard: atWork, plan: planned } = { yard: begunYard(), plan: begunPlan() };
  type Begun = NonNullable<YardFileInput['begun']> & {
    [K in keyof Required<NonNullable<YardFileInput['begun']>>]: object[];
  };
  const begunFaultsOf = (change: (begun: Begun, file: YardFileInput) => unknown) => {
    const file = structuredClone(atWork) as YardFileInput;
    change(file.begun as Begun, file);
    return referenceFaults(file).map((f) => `${f.path}: ${f.message}`);
  };
  const at = (clock: string) => `2027-04-10T${clock}:00+01:00`;

  test('of the file it starts from has none', () => {
    expect(planned.batches.length).toBe(2);
    expect(begunFaultsOf(() => {})).toEqual([]);
  });

  test.each<[string, (begun: Begun, file: YardFileInput) => unknown]>([
    ['batches[0].mix: no mix named "x"', (b) => Object.assign(b.batches[0]!, { mix: 'x' })],
    ['pours[0].batch: no batch named "x"', (b) => Object.assign(b.pours[0]!, { batch: 'x' })],
    ['pours[0].mould: no mould named "x"', (b) => Object.assign(b.pours[0]!, { mould: 'x' })],
    ['strips[0].mould: no mould named "x"', (b) => Object.assign(b.strips[0]!, { mould: 'x' })],
    ['packs[0].order: no order named "x"', (b) => Object.assign(b.packs[0]!, { order: 'x' })],
    ['preps[0].casting: no casting named "x"', (b) => Object.assign(b.preps[0]!, { casting: 'x' })],
    ['batches[0].start: is after now: it has not begun', (b) => Object.assign(b.batches[0]!, { start: at('09:21') })],
    ['batches[0].end: is not after now: it is over', (b) => Object.assign(b.batches[0]!, { end: at('09:20') })],
    [
      'strips[0].stripStart: is after now: it has not begun',
      (b) => Object.assign(b.strips[0]!, { stripStart: at('09:21') }),
    ],
    ['packs[0].packEnd: is not after now: it is over', (b) => Object.assign(b.packs[0]!, { packEnd: at('09:19') })],
    ['preps[0].prepEnd: is not after now: it is over', (b) => Object.assign(b.preps[0]!, { prepEnd: at('09:20') })],
    ['pours[0].fillStart: is before its batch begins', (b) => Object.assign(b.pours[0]!, { fillStart: at('09:07') })],
    ['pours[1].fillEnd: is after its batch ends', (b) => Object.assign(b.pours[1]!, { fillEnd: at('09:38') })],
    ['pours[1].prepEnd: is after its batch begins', (b) => Object.assign(b.pours[1]!, { prepEnd: at('09:09') })],
    ['pours[0].mould: mould "C" holds a piece', (b) => Object.assign(b.pours[0]!, { mould: 'C' })],
    ['preps[0].mould: mould "C" holds a piece', (b) => Object.assign(b.preps[0]!, { mould: 'C' })],
    ['strips[0].mould: mould "D" holds no piece', (b) => Object.assign(b.strips[0]!, { mould: 'D' })],
    ['preps[0].mould: "A" is in two tasks at once', (b) => Object.assign(b.preps[0]!, { mould: 'A' })],
    ['packs[1].order: "27-003" is in two tasks at once', (b) => b.packs.push({ ...b.packs[0]!, fromFinished: [] })],
    [
      'strips[0].pour: has no place here: the piece is in its mould already',
      (b) => Object.assign(b.strips[0]!, { pour: 'P1' }),
    ],
    [
      'pours[0].casting: mould "A" does not make "coping"',
      (b, file) => {
        file.castings.push({ ...file.castings[0]!, id: 'coping' });
        Object.assign(b.pours[0]!, { casting: 'coping' });
      },
    ],
    [
      'packs[0].fromFinished[0].finished: there is no finished[7]',
      (b) => Object.assign(b.packs[0]!, { fromFinished: [{ finished: 7, count: 1 }] }),
    ],
    [
      'packs[0].fromFinished[0].count: finished[1] has only 1',
      (_, file) => Object.assign(file.finished[1]!, { count: 1 }),
    ],
    [
      'packs[0].fromFinished[0].finished: finished[1] is set aside for "27-001"',
      (_, file) => Object.assign(file.finished[1]!, { order: '27-001' }),
    ],
  ])('%s', (fault, change) => expect(begunFaultsOf(change)).toContain(`begun.${fault}`));

  test('has ids of its own, and what is fixed may name its pours', () => {
    const { batches, pours } = atWork.begun!;
    const fixed = begunFaultsOf((_, file) => Object.assign(file, { keep: { batches, pours } }));
    expect(fixed).toEqual([
      'begun.batches[0].id: "B1" is in keep too',
      'begun.pours[0].id: "P1" is in keep too',
      'begun.pours[1].id: "P2" is in keep too',
    ]);
    const strip = (pour: string) =>
      begunFaultsOf((_, file) => {
        const strips = [{ mould: 'A', pour, stripStart: at('10:40'), stripEnd: at('10:48') }];
        Object.assign(file, { keep: { batches: [], pours: [], strips } });
      });
    expect(strip('P1')).toEqual([]);
    expect(strip('P9')).toEqual(['keep.strips[0].pour: no pour named "P9"']);
  });

  test('names moulds, castings and orders that are there, and so does what is fixed', () => {
    const fixed = { batches: [], pours: [] };
    const faults = begunFaultsOf((_, file) =>
      Object.assign(file, {
        keep: {
          ...fixed,
          strips: [{ mould: 'x', stripStart: at('10:40'), stripEnd: at('10:48') }],
          packs: [{ order: 'x', packStart: at('10:40'), packEnd: at('10:48') }],
          preps: [{ mould: 'x', casting: 'x', prepStart: at('10:40'), prepEnd: at('10:48') }],
        },
      }),
    );
    expect(faults).toEqual([
      'keep.strips[0].mould: no mould named "x"',
      'keep.packs[0].order: no order named "x"',
      'keep.preps[0].mould: no mould named "x"',
      'keep.preps[0].casting: no casting named "x"',
    ]);
  });
});
