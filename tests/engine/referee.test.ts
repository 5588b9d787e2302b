import { describe, expect, it } from 'vitest';
import type { PlanFile } from '../../shared/plan.ts';
import { dateOfDay, dayNumber, minuteOf } from '../../shared/time.ts';
import type { YardFileInput } from '../../shared/yard-file.ts';
import { calendarOf } from '../../src/engine/calendar/calendar.ts';
import { refereePlan } from '../../src/engine/referee.ts';
import { audit } from '../contract/audit-plan.mjs';
import { handMadePlan, handMadeYard } from '../support/hand-made-plan.ts';

const { instantText } = calendarOf('Europe/Dublin');
const later = (instant: string, minutes: number): string => instantText(minuteOf(instant) + minutes);

/** Moves instants of one record. */
const move = <T extends object>(record: T, minutes: number, ...keys: (keyof T)[]): void => {
  for (const key of keys) record[key] = later(record[key] as string, minutes) as T[typeof key];
};

/** Fields of a record given other values, or a field left out. */
const set = <T extends object>(record: T, values: { [K in keyof T]?: T[K] | undefined }): void => {
  Object.assign(record, values);
};
const drop = (record: object, key: string): void => {
  Reflect.deleteProperty(record, key);
};

type YardChange = (input: YardFileInput) => void;
type PlanChange = (plan: PlanFile) => void;
const nothing = () => {};

const rulesFound = (changePlan: PlanChange, changeYard: YardChange): string[] => {
  const plan = handMadePlan();
  changePlan(plan);
  return [...new Set(refereePlan(handMadeYard(changeYard), plan).map((x) => x.rule))];
};

/** The same, as the independent check has it. */
const rulesAudited = (changePlan: PlanChange, changeYard: YardChange): string[] => {
  const plan = handMadePlan();
  changePlan(plan);
  return [...new Set(audit(handMadeYard(changeYard), plan).faults.map((fault) => fault.split(' ')[0]!))];
};

/** Moves the batch, what is filled from it, and what is stripped, as a whole. */
const moveBatch = (plan: PlanFile, minutes: number): void => {
  for (const x of plan.batches) move(x, minutes, 'start', 'mixEnd', 'end');
  for (const x of plan.pours) move(x, minutes, 'fillStart', 'fillEnd', 'stripStart', 'stripEnd', 'pieceReadyAt');
  plan.sticks[0]!.openedAt = plan.batches[0]!.start;
};

/** A day to come for rods, of which there is none: the one that is cut on the 14th is bought, and the bag is ordered today. */
const TWO_IN_HAND: YardChange = (y) => {
  set(y.yard, { deliveryDaysInHand: 2 });
  set(y.materials[3]!, { onHand: 0, leadDays: 1 });
};
const rodOn =
  (arrivesOn: string): PlanChange =>
  (plan) => {
    set(plan.buys[0]!, { orderBy: '2027-04-08', arrivesOn: '2027-04-09' });
    const orderBy = dateOfDay(dayNumber(arrivesOn) - 1);
    plan.buys.push({ material: 'rod', quantity: 1, orderBy, arrivesOn });
  };

describe('a plan made by hand', () => {
  it('is in order, to the referee and to the independent check', () => {
    expect(refereePlan(handMadeYard(), handMadePlan())).toEqual([]);
    expect(audit(handMadeYard(), handMadePlan()).faults).toEqual([]);
  });

  it('may be ordered today with as many days in hand as there are, and with none where it cannot come sooner', () => {
    for (const [leadDays, arrivesOn] of [
      [1, '2027-04-09'],
      [2, '2027-04-10'],
    ] as const) {
      const ordered: PlanChange = (plan) => set(plan.buys[0]!, { orderBy: '2027-04-08', arrivesOn });
      const inHand: YardChange = (y) => {
        set(y.yard, { deliveryDaysInHand: 7 });
        set(y.materials[0]!, { leadDays });
      };
      expect(rulesFound(ordered, inHand)).toEqual([]);
      expect(rulesAudited(ordered, inHand)).toEqual([]);
    }
  });

  it('has the rod of the 14th two days sooner with two days in hand', () => {
    expect(rulesFound(rodOn('2027-04-12'), TWO_IN_HAND)).toEqual([]);
    expect(rulesAudited(rodOn('2027-04-12'), TWO_IN_HAND)).toEqual([]);
  });

  it('is fetched on the very day where days are in hand for what is delivered', () => {
    const fetched: PlanChange = (plan) => set(plan.buys[0]!, { orderBy: '2027-04-10', arrivesOn: '2027-04-10' });
    const inHand: YardChange = (y) => {
      set(y.yard, { deliveryDaysInHand: 7 });
      set(y.materials[0]!, { leadDays: 0 });
    };
    expect(rulesFound(fetched, inHand)).toEqual([]);
    expect(rulesAudited(fetched, inHand)).toEqual([]);
  });

  it('may be later where nothing forbids it', () => {
    const laterBatch: PlanChange = (plan) => {
      moveBatch(plan, 20);
      plan.pours[0]!.prepStart = plan.pours[0]!.prepEnd = plan.batches[0]!.start;
    };
    expect(rulesFound(laterBatch, nothing)).toEqual([]);
  });
});

/** What is changed in the plan, or in the yard it is for, and the rule it breaks. */
const BREAKS: [rule: string, what: string, plan: PlanChange, yard?: YardChange][] = [
  ['R0', 'an instant without an offset', (p) => set(p.batches[0]!, { start: '2027-04-10T09:08:00' })],
  ['R0', 'a list missing', (p) => drop(p, 'sticks')],
  ['R0', 'a mould nobody has', (p) => set(p.pours[0]!, { mould: 'Z' })],
  ['R0', 'an order nobody placed', (p) => set(p.pours[0]!, { order: '27-009' })],
  ['R0', 'a pour of no batch', (p) => set(p.pours[0]!, { batch: 'B9' })],
  ['R0', 'a pour twice', (p) => p.pours.push(structuredClone(p.pours[0]!))],
  ['R0', 'a date that does not exist', (p) => set(p.buys[0]!, { orderBy: '2027-02-30' })],
  ['R0', 'a part of a piece', (p) => set(p.orders[1]!.fromFinished[0]!, { count: 0.5 })],
  ['R0', 'a stick opened for nothing', (p) => set(p.sticks[0]!, { cuts: [] })],
  ['R0', 'a strip of an empty mould', (p) => set(p.strips[0]!, { mould: 'A' })],
  ['R0', 'a score that is not its own', (p) => set(p.score, { weightedCompletionDays: 12 })],
  ['R1', 'a task while setting up', (p) => move(p.coats[0]!, -1, 'start', 'end')],
  ['R1', 'a strip while clearing up', (p) => move(p.pours[1]!, 114, 'stripStart', 'stripEnd')],
  ['R1', 'packing when nobody works', (p) => move(p.orders[0]!, 120, 'packStart', 'packEnd', 'completesAt')],
  ['R1', 'two things at once for one person', (p) => move(p.pours[1]!, -1, 'stripStart', 'stripEnd')],
  ['R1', 'a batch that takes two', nothing, (y) => set(y.mixes[0]!, { crew: 2 })],
  ['R1', 'a strip that takes two', nothing, (y) => set(y.castings[0]!, { stripCrew: 2 })],
  ['R1', 'no window for packing', nothing, (y) => set(y.extra[1]!, { allows: ['prep', 'batch', 'strip'] })],
  [
    'R1',
    'no window for a batch half-way through it',
    nothing,
    (y) =>
      set(y, {
        extra: [
          { date: '2027-04-10', start: '08:00', end: '09:30' },
          { date: '2027-04-10', start: '09:30', end: '13:00', allows: ['prep', 'strip', 'pack'] },
          y.extra[1]!,
        ],
      }),
  ],
  ['R1', 'work before now', nothing, (y) => set(y.yard, { now: '2027-04-10T08:30:00+01:00' })],
  ['R2', 'no mixer', nothing, (y) => set(y.yard, { mixers: 0 })],
  ['R3', 'mixed too short', (p) => move(p.batches[0]!, -1, 'mixEnd')],
  ['R3', 'a gap between two pours', (p) => move(p.pours[1]!, 1, 'fillStart', 'fillEnd')],
  ['R3', 'filled too quickly', (p) => move(p.pours[1]!, -1, 'fillEnd')],
  ['R3', 'not washed out', (p) => move(p.batches[0]!, -1, 'end')],
  ['R3', 'pours that the batch does not list', (p) => p.batches[0]!.pours.pop()],
  ['R3', 'stiff before it is filled', nothing, (y) => set(y.mixes[0]!, { workingMinutes: 13 })],
  ['R3', 'stiff sooner in the heat', nothing, (y) => set(y.temperatures[0]!, { celsius: 28 })],
  ['R3', 'nobody there to keep it wet', nothing, (y) => set(y.mixes[0]!, { attendMinutes: 209 })],
  ['R4', 'the wrong mass', (p) => set(p.batches[0]!, { kg: 27 })],
  ['R4', 'a bag too many', (p) => set(p.batches[0]!, { bags: 2 })],
  ['R4', 'more than a bag', nothing, (y) => set(y.mixes[0]!, { yieldKgPerBag: 27.1 })],
  ['R5', 'a retired mould', nothing, (y) => set(y.moulds[0]!, { condition: 'retired' })],
  ['R5', 'a damaged mould', nothing, (y) => set(y.moulds[1]!, { condition: 'damaged' })],
  [
    'R5',
    'a mould mended a day too late',
    nothing,
    (y) => set(y.moulds[1]!, { condition: 'damaged', repairedOn: '2027-04-11' }),
  ],
  ['R5', 'a mould that makes something else', nothing, (y) => set(y.moulds[1]!, makesOther(y))],
  ['R5', 'a mould twice at once', (p) => set(p.pours[1]!, { mould: 'A' })],
  ['R5', 'a mould prepared before it is empty', (p) => set(p.pours[1]!, inMouldC)],
  ['R5', 'a piece forgotten in its mould', (p) => set(p, { strips: [] })],
  ['R6', 'prep cut short', (p) => move(p.pours[1]!, 1, 'prepStart')],
  ['R6', 'a prepped mould prepared', (p) => move(p.pours[0]!, -12, 'prepStart')],
  ['R6', 'a clean mould cleaned', (p) => move(p.pours[1]!, -6, 'prepStart')],
  ['R6', 'changing over left out', nothing, changeOver],
  ['R7', 'stripped a minute too early', (p) => move(p.pours[0]!, -1, 'stripStart', 'stripEnd')],
  ['R7', 'stripped too quickly', (p) => move(p.pours[1]!, 1, 'stripStart')],
  ['R7', 'stripped too early for the cold', nothing, (y) => set(y.temperatures[0]!, { celsius: 10 })],
  ['R7', 'the piece that was in a mould stripped too early', nothing, slowPieceInC],
  ['R8', 'ready too early', (p) => move(p.pours[1]!, -1, 'pieceReadyAt')],
  ['R8', 'ready too late', (p) => move(p.strips[0]!, 1, 'pieceReadyAt')],
  ['R8', 'no room on the rack', nothing, (y) => set(y.yard, { rackSpaces: 1 })],
  [
    'R8',
    'finished pieces still on the rack',
    nothing,
    (y) => set(y.finished[0]!, { readyAt: '2027-04-10T11:00:00+01:00' }),
  ],
  ['R9', 'too cold on the day', nothing, (y) => set(y.mixes[0]!, { minCelsius: 21 })],
  ['R9', 'too hot on the day', nothing, (y) => set(y.mixes[0]!, { maxCelsius: 19 })],
  ['R9', 'too cold on the day after', nothing, (y) => y.temperatures.push({ from: '2027-04-11', celsius: 4 })],
  ['R10', 'a bag not bought', (p) => set(p, { buys: [] })],
  ['R10', 'a bag too many bought', (p) => set(p.buys[0]!, { quantity: 2 })],
  ['R10', 'bought a day too early', (p) => set(p.buys[0]!, { orderBy: '2027-04-08', arrivesOn: '2027-04-09' })],
  ['R10', 'arriving before it can', (p) => set(p.buys[0]!, { orderBy: '2027-04-10' })],
  ['R10', 'bought before today', nothing, (y) => set(y.materials[0]!, { leadDays: 3 })],
  ['R10', 'bought on the last day, with no day in hand', nothing, (y) => set(y.yard, { deliveryDaysInHand: 1 })],
  ['R10', 'with fewer days in hand than are kept', rodOn('2027-04-13'), TWO_IN_HAND],
  ['R10', 'bought sooner than the days in hand ask for', rodOn('2027-04-11'), TWO_IN_HAND],
  ['R10', 'part of a pack', nothing, (y) => set(y.materials[0]!, { pack: 2 })],
  ['R10', 'bought though it cannot be', nothing, (y) => set(y.materials[0]!, { leadDays: undefined })],
  ['R10', 'less than is always kept', nothing, (y) => set(y.materials[1]!, { minimum: 4.8 })],
  ['R10', 'too little mesh', nothing, (y) => set(y.materials[1]!, { onHand: 0.2 })],
  ['R10', 'a stick that is not there', nothing, (y) => set(y.materials[2]!, { onHand: 0 })],
  ['R10', 'a stick too short', nothing, (y) => set(y.materials[3]!, { stickMm: 1208 })],
  ['R10', 'a sleeve missing', (p) => set(p.sticks[0]!.cuts[0]!, { count: 3 })],
  ['R10', 'a pin too many', (p) => set(p.sticks[1]!.cuts[0]!, { count: 5 })],
  ['R10', 'cuts nobody needs', (p) => p.sticks[1]!.cuts.push({ lengthMm: 500, count: 1, for: '27-002' })],
  ['R10', 'a stick opened after it is used', (p) => move(p.sticks[0]!, 1, 'openedAt')],
  ['R11', 'an order forgotten', (p) => p.orders.pop()],
  ['R11', 'a piece too few', (p) => drop(p.pours[0]!, 'order')],
  ['R11', 'a piece too many', (p) => set(p.strips[0]!, { order: '27-001' })],
  ['R11', 'another order’s finished piece', nothing, (y) => set(y.finished[0]!, { order: '27-001' })],
  [
    'R11',
    'another order’s piece in a mould',
    (p) => set(p.strips[0]!, { order: '27-002' }),
    (y) => set(y.inMould[0]!, { order: '27-001' }),
  ],
  ['R11', 'more finished pieces than there are', nothing, (y) => set(y.finished[0]!, { count: 0 })],
  [
    'R11',
    'packed before the last piece is ready',
    (p) => move(p.orders[0]!, -6130, 'packStart', 'packEnd', 'completesAt'),
  ],
  ['R11', 'packed too quickly', (p) => move(p.orders[0]!, -1, 'packEnd', 'completesAt')],
  ['R11', 'not packed', nothing, (y) => set(y.orders[1]!, { lines: [{ kit: 'pair', quantity: 1 }] })],
  ['R11', 'packed without need', nothing, (y) => set(y.kits[0]!, { packMinutes: 0 })],
  ['R11', 'complete before it is packed', (p) => move(p.orders[0]!, -1, 'completesAt')],
  ['R11', 'complete later than it could be', (p) => move(p.orders[1]!, 1, 'completesAt')],
  ['R11', 'handed over on another day', (p) => set(p.orders[0]!, { completesOn: '2027-04-14' })],
  ['R11', 'later than it says', nothing, (y) => set(y.orders[0]!, { due: '2027-04-16' })],
  ['R11', 'after the last date', nothing, (y) => set(y.yard, { horizonDays: 5 })],
  [
    'R11',
    'left out, and yet its pieces are made',
    (p) => {
      p.orders.shift();
      p.unplanned.push({ order: '27-001', cause: 'time', reason: 'no time' });
    },
  ],
  ['R13', 'a fixed pour in another mould', nothing, (y) => keep(y, (k) => set(k.pours[0]!, { mould: 'C' }))],
  [
    'R13',
    'a fixed batch at another time',
    nothing,
    (y) => keep(y, (k) => move(k.batches[0]!, 5, 'start', 'mixEnd', 'end')),
  ],
  [
    'R13',
    'something dropped that was not fixed',
    (p) => p.dropped.push({ batch: 'B7', at: p.orders[0]!.completesAt, reason: 'no time' }),
  ],
];

function makesOther(yard: YardFileInput): object {
  yard.castings.push({ ...yard.castings[0]!, id: 'coping' });
  return { makes: [{ casting: 'coping' }], setFor: 'coping' };
}

/** The piece in mould C is of a mix that stays in its mould for four days; it was poured three days before it is stripped. */
function slowPieceInC(yard: YardFileInput): void {
  yard.mixes.push({ ...yard.mixes[0]!, id: 'slow', demouldMinutes: 5760 });
  yard.castings.push({ ...yard.castings[0]!, id: 'coping', mix: 'slow' });
  yard.moulds[2]!.makes = [{ casting: 'coping' }];
  yard.moulds[2]!.setFor = 'coping';
  yard.inMould[0]!.casting = 'coping';
}

function changeOver(yard: YardFileInput): void {
  yard.castings.push({ ...yard.castings[0]!, id: 'coping' });
  yard.moulds[1]!.makes = [{ casting: 'coping' }, { casting: 'panel', changeMinutes: 9 }];
  yard.moulds[1]!.setFor = 'coping';
}

const inMouldC = {
  mould: 'C',
  prepStart: '2027-04-10T08:20:00+01:00',
  prepEnd: '2027-04-10T08:38:00+01:00',
};

function keep(yard: YardFileInput, change: (kept: NonNullable<YardFileInput['keep']>) => void): void {
  const { batches, pours } = handMadePlan();
  yard.keep = { batches, pours };
  change(yard.keep);
}

describe('a plan that breaks a rule', () => {
  it.each(BREAKS)('%s: %s', (rule, _, changePlan, changeYard = nothing) => {
    expect(rulesFound(changePlan, changeYard)).toContain(rule);
    expect(rulesAudited(changePlan, changeYard)).toContain(rule);
  });

  it('is found out for every rule that one plan can break', () => {
    const rules = new Set(BREAKS.map(([rule]) => rule));
    expect([...rules].sort()).toEqual([
      'R0',
      'R1',
      'R10',
      'R11',
      'R13',
      'R2',
      'R3',
      'R4',
      'R5',
      'R6',
      'R7',
      'R8',
      'R9',
    ]);
  });

  it('is found out for a field too many, which the independent check does not read', () => {
    const tooMany: PlanChange = (p) => Object.assign(p.batches[0]!, { colour: 'red' });
    expect(rulesFound(tooMany, nothing)).toEqual(['R0']);
  });

  it('is told in words that name what is wrong', () => {
    const plan = handMadePlan();
    Reflect.deleteProperty(plan.pours[0]!, 'order');
    expect(refereePlan(handMadeYard(), plan)).toEqual([
      { rule: 'R11', message: 'order 27-001 gets 1 of panel, not 2' },
    ]);
  });
});

/** The four pins of 300 mm are cut from a rest of rod, 1209 mm with the saw cuts; there is no whole rod. */
const fromOffcut = (lengthMm: number, count = 1, mm = lengthMm): [PlanChange, YardChange] => [
  (plan) => set(plan.sticks[1]!, { offcutMm: mm }),
  (yard) => set(yard.materials[3]!, { onHand: 0, offcuts: [{ lengthMm, count }] }),
];
/** Two pins from each of two rests. */
const inTwo = (plan: PlanFile): void => {
  const rod = plan.sticks[1]!;
  rod.cuts[0]!.count = 2;
  plan.sticks.push(structuredClone(rod));
};
const both =
  (...changes: PlanChange[]): PlanChange =>
  (plan) =>
    changes.forEach((change) => {
      change(plan);
    });
/** A plan that the referee and the independent check judge alike. */
const r10Found = ([changePlan, changeYard]: [PlanChange, YardChange]): boolean => {
  const plan = handMadePlan();
  changePlan(plan);
  const yard = handMadeYard(changeYard);
  const rules = [...new Set(refereePlan(yard, plan).map(({ rule }) => rule))];
  expect(rules).toEqual([...new Set(audit(yard, plan).faults.map((fault) => fault.split(' ')[0]!))]);
  return rules.length > 0;
};

describe('rests of opened sticks', () => {
  it.each<[string, PlanChange, YardChange]>([
    ['one that is long enough', ...fromOffcut(1209)],
    ['one of several', ...fromOffcut(2232, 3)],
    ['two of one length', both(fromOffcut(700, 2)[0], inTwo), fromOffcut(700, 2)[1]],
  ])('may be cut though no whole stick is there: %s', (_, changePlan, changeYard) => {
    expect(r10Found([changePlan, changeYard])).toBe(false);
  });

  it.each<[string, PlanChange, YardChange]>([
    ['cut to more than it is long', ...fromOffcut(1208)],
    ['that the yard has not', ...fromOffcut(2232, 1, 2231)],
    ['cut twice', both(fromOffcut(700)[0], inTwo), fromOffcut(700)[1]],
    [
      'opened after it is used',
      both(fromOffcut(1300)[0], (plan) => move(plan.sticks[1]!, 1, 'openedAt')),
      fromOffcut(1300)[1],
    ],
    ['counted as a whole stick', nothing, fromOffcut(3000)[1]],
    ['counted as a share of a stick', nothing, (yard) => set(yard.materials[3]!, { onHand: 0.999 })],
  ])('are found out by both: %s', (_, changePlan, changeYard) => {
    expect(r10Found([changePlan, changeYard])).toBe(true);
  });
});

describe('fixed batches', () => {
  it('may stay as they are, for something else and stripped at another time', () => {
    const other = (y: YardFileInput) =>
      keep(y, (k) => {
        Reflect.deleteProperty(k.pours[0]!, 'order');
        move(k.pours[1]!, 30, 'stripStart', 'stripEnd');
      });
    expect(rulesFound(nothing, other)).toEqual([]);
  });
});
