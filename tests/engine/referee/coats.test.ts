import { describe, expect, it } from 'vitest';
import type { PlanFile } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFileInput } from '../../../shared/yard-file.ts';
import { calendarOf } from '../../../src/engine/calendar/calendar.ts';
import { refereePlan } from '../../../src/engine/referee.ts';
import { audit } from '../../contract/audit-plan.mjs';
import { begunPlan, begunYard } from '../../support/hand-made-begun.ts';
import { handMadePlan, handMadeYard } from '../../support/hand-made-plan.ts';

const { instantText } = calendarOf('Europe/Dublin');
const move = <T extends object>(record: T, minutes: number, ...keys: (keyof T)[]): void => {
  for (const key of keys) Object.assign(record, { [key]: instantText(minuteOf(record[key] as string) + minutes) });
};
const set = <T extends object>(record: T, values: { [K in keyof T]?: T[K] | undefined }): void => {
  Object.assign(record, values);
};

type YardChange = (input: YardFileInput) => void;
type PlanChange = (plan: PlanFile) => void;
const nothing = () => {};

/** The rules that a changed plan breaks, by the referee and by the independent check. */
const rulesFound = (changePlan: PlanChange, changeYard: YardChange): { referee: string[]; audit: string[] } => {
  const plan = handMadePlan();
  changePlan(plan);
  const yard = handMadeYard(changeYard);
  const faults = audit(yard, plan).faults.map((fault) => fault.split(' ')[0]!);
  return { referee: refereePlan(yard, plan).map(({ rule }) => rule), audit: faults };
};

/** B's coat of this morning is not written down yet as given; it dries until after it is set up. */
function dryingB(yard: YardFileInput): void {
  Object.assign(yard.moulds[1]!, { condition: 'ready', turnsSinceOil: 0, dryFrom: '2027-04-10T08:57:00+01:00' });
}

/** Ten minutes on a clean mould, before B is set up and after its piece is out. */
const beforeB = { start: '2027-04-10T08:26:00+01:00', end: '2027-04-10T08:36:00+01:00' };
const afterB = { start: '2027-04-10T11:00:00+01:00', end: '2027-04-10T11:16:00+01:00' };

const coats = { turnsSinceOil: 3, oilEveryTurns: 3, oilMinutes: 10, oilDryMinutes: 0 };
function coatlessA(yard: YardFileInput): void {
  Object.assign(yard.moulds[0]!, { ...coats, prepped: false, oilEveryTurns: undefined });
}
function coatedA(yard: YardFileInput): void {
  Object.assign(yard.moulds[0]!, coats);
}

const mendedLate = { condition: 'damaged', repairedOn: '2027-04-11' } as const;

/** What is changed in the plan, or in the yard it is for, and the rule it breaks. Mould B is coated from 8:10 to 8:26. */
const BREAKS: [rule: string, what: string, plan: PlanChange, yard?: YardChange][] = [
  ['R0', 'a coat of no mould', (p) => set(p.coats[0]!, { mould: 'Z' })],
  ['R0', 'no list of coats', (p) => Reflect.deleteProperty(p, 'coats')],
  ['R0', 'a set-up that says it has a coat', (p) => Object.assign(p.pours[0]!, { oiled: false })],
  ['R1', 'a coat before the yard is open', (p) => move(p.coats[0]!, -1, 'start', 'end')],
  ['R1', 'a coat when nobody may set up', nothing, (y) => set(y.extra[0]!, { allows: ['batch', 'strip'] })],
  ['R1', 'a coat and a strip for one person', (p) => move(p.coats[0]!, 13, 'start', 'end')],
  [
    'R6',
    'a sealing coat left out, cleaned at the set-up',
    (p) => {
      p.coats = [];
      move(p.pours[1]!, -6, 'prepStart');
    },
  ],
  ['R6', 'a coat left out', (p) => set(p, { coats: [] })],
  ['R6', 'a coat not dry', (p) => move(p.coats[0]!, 1, 'start', 'end')],
  ['R6', 'a coat that dries longer', nothing, (y) => set(y.moulds[1]!, { oilDryMinutes: 31 })],
  [
    'R6',
    'a mould that is still drying coated',
    nothing,
    (y) => set(y.moulds[1]!, { dryFrom: '2027-04-10T08:11:00+01:00' }),
  ],
  ['R6', 'a mould that is still drying set up', (p) => set(p, { coats: [] }), dryingB],
  ['R6', 'a coat cut short', (p) => move(p.coats[0]!, -1, 'end')],
  ['R6', 'a coat too long', (p) => move(p.coats[0]!, 1, 'end')],
  ['R6', 'a clean mould cleaned before its coat', nothing, (y) => set(y.moulds[1]!, { condition: 'ready' })],
  ['R6', 'a coat that nothing is poured after', (p) => p.coats.push({ ...p.coats[0]!, ...afterB })],
  ['R6', 'two coats on top of one another', (p) => p.coats.push({ ...p.coats[0]!, ...beforeB })],
  ['R6', 'a coat of a mould that takes none', (p) => p.coats.push({ mould: 'A', ...beforeB }), coatlessA],
  ['R6', 'a prepped mould coated, and not set up again', (p) => p.coats.push({ mould: 'A', ...beforeB }), coatedA],
  ['R5', 'a coat of a mould that holds a piece', (p) => p.coats.push({ ...p.coats[0]!, mould: 'C' })],
  ['R5', 'a coat while the piece sets', (p) => move(p.coats[0]!, 100, 'start', 'end')],
  ['R5', 'a coat while it is being set up', (p) => move(p.coats[0]!, 50, 'start', 'end')],
  ['R5', 'a coat of a scrapped mould', nothing, (y) => set(y.moulds[1]!, { condition: 'retired' })],
  ['R5', 'a coat before the mould is mended', nothing, (y) => set(y.moulds[1]!, mendedLate)],
];

describe('a plan with a fault in its sealing coats', () => {
  it.each(BREAKS)('%s: %s', (rule, _, changePlan, changeYard = nothing) => {
    const found = rulesFound(changePlan, changeYard);
    expect(found.referee).toContain(rule);
    expect(found.audit).toContain(rule);
  });
});

/** By hand: every minute of the coat, of its drying and of the set-up is used, and may be used otherwise. */
describe('a plan made by hand is in order', () => {
  const inOrder = (changePlan: PlanChange, changeYard: YardChange = nothing) =>
    expect(rulesFound(changePlan, changeYard)).toEqual({ referee: [], audit: [] });

  it('as it is', () => inOrder(nothing));

  it('with a coat before it is due', () => inOrder(nothing, (y) => set(y.moulds[1]!, { turnsSinceOil: 1 })));

  it('with a coat of a mould that was set up, and is set up again', () =>
    inOrder((p) => {
      p.coats.push({ mould: 'A', start: '2027-04-10T08:26:00+01:00', end: '2027-04-10T08:36:00+01:00' });
      p.strips[0] = { ...p.strips[0]!, ...stripLater };
      set(p.pours[0]!, { prepStart: '2027-04-10T08:38:00+01:00', prepEnd: '2027-04-10T08:50:00+01:00' });
    }, coatedA));

  it('without a coat where the mould is due and set up already', () =>
    inOrder(nothing, (y) => set(y.moulds[0]!, { turnsSinceOil: 3, oilEveryTurns: 3, oilMinutes: 10 })));

  it('set up the minute the coat that was given is dry', () =>
    inOrder(
      (p) => set(p, { coats: [] }),
      (y) =>
        Object.assign(y.moulds[1]!, { condition: 'ready', turnsSinceOil: 0, dryFrom: '2027-04-10T08:56:00+01:00' }),
    ));

  it('with a fixed coat that nothing is poured after', () => {
    const coat = { mould: 'B', ...afterB };
    const fixed: YardChange = (y) => {
      y.keep = { batches: [], pours: [], coats: [coat] };
    };
    inOrder((p) => p.coats.push({ ...coat }), fixed);
  });
});

describe('a coat under way at 9:20, of a fifth mould, since 9:16', () => {
  const coat = { mould: 'E', start: '2027-04-10T09:16:00+01:00', end: '2027-04-10T09:24:00+01:00' };
  const judged = (changePlan: PlanChange, changeYard: YardChange = nothing) => {
    const yard = begunYard((y) => {
      y.moulds.push({ ...y.moulds[3]!, id: 'E', condition: 'dirty', ...coats, oilDryMinutes: 20 });
      y.begun!.coats = [{ ...coat }];
      y.extra[0]!.crew = 5;
      changeYard(y);
    });
    const plan = begunPlan();
    plan.coats.push({ ...coat });
    changePlan(plan);
    const rules = (list: string[]) => [...new Set(list)];
    return {
      referee: rules(refereePlan(yard, plan).map(({ rule }) => rule)),
      audit: rules(audit(yard, plan).faults.map((fault) => fault.split(' ')[0]!)),
    };
  };

  it('is in order, however long it takes and whatever is poured after it', () =>
    expect(judged(nothing)).toEqual({ referee: [], audit: [] }));

  it.each<[string, PlanChange]>([
    ['given up', (p) => set(p, { coats: [] })],
    ['moved', (p) => move(p.coats[0]!, 5, 'start', 'end')],
    ['longer', (p) => move(p.coats[0]!, 1, 'end')],
  ])('is found when it is %s', (_, changePlan) => {
    const found = judged(changePlan);
    expect(found.referee).toContain('R14');
    expect(found.audit).toContain('R14');
  });

  // Its mould is dry at 9:44: no set-up before that.
  it('keeps its mould from being set up while it dries', () => {
    const inE = (prep: string): PlanChange => {
      const [from, to] = [prep, instantText(minuteOf(prep) + 12)];
      return (p) => {
        set(p.pours[2]!, { mould: 'E', prepStart: from, prepEnd: to });
        set(p.batches[1]!, { start: to, mixEnd: instantText(minuteOf(to) + 10), end: instantText(minuteOf(to) + 22) });
        set(p.pours[2]!, { fillStart: instantText(minuteOf(to) + 10), fillEnd: instantText(minuteOf(to) + 17) });
        move(
          p.pours[2]!,
          minuteOf(to) - minuteOf('2027-04-10T09:40:00+01:00'),
          'stripStart',
          'stripEnd',
          'pieceReadyAt',
        );
        p.sticks[0]!.openedAt = to;
      };
    };
    expect(judged(inE('2027-04-10T09:44:00+01:00'))).toEqual({ referee: [], audit: [] });
    expect(judged(inE('2027-04-10T09:43:00+01:00'))).toEqual({ referee: ['R6'], audit: ['R6'] });
  });
});

/** After the coat of A, and out of the way of its set-up. */
const stripLater = {
  stripStart: '2027-04-10T10:56:00+01:00',
  stripEnd: '2027-04-10T11:04:00+01:00',
  pieceReadyAt: '2027-04-10T11:04:00+01:00',
};
