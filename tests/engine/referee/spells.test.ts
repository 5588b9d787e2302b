import { describe, expect, it } from 'vitest';
import type { PlanFile, PlanOrder } from '../../../shared/plan.ts';
import type { YardFile, YardFileInput } from '../../../shared/yard-file.ts';
import { refereePlan } from '../../../src/engine/referee.ts';
import { audit } from '../../contract/audit-plan.mjs';
import { spellBegunPlan, spellBegunYard, spellsPlan, spellsYard } from '../../support/hand-made-spells.ts';

type YardChange = (input: YardFileInput) => void;
type OrderChange = (order: PlanOrder, plan: PlanFile) => void;
const nothing = () => {};

const april = (day: number, clock: string) => `2027-04-${String(day).padStart(2, '0')}T${clock}:00+01:00`;

/** The rules that the referee says are broken, and those that the independent check says are. */
const rulesOf = (yard: YardFile, plan: PlanFile) => ({
  referee: [...new Set(refereePlan(yard, plan).map((x) => x.rule))],
  audit: [...new Set(audit(yard, plan).faults.map((x) => x.split(' ')[0]!))],
});
const found = (make: () => PlanFile, yard: YardFile, change: OrderChange) => {
  const plan = make();
  change(plan.orders[0]!, plan);
  return rulesOf(yard, plan);
};
const IN_ORDER = { referee: [], audit: [] };
const both = (rule: string) => ({ referee: [rule], audit: [rule] });

/** The last spell of an order, with which it is complete, moved. */
const moveLast = (order: PlanOrder, packStart: string, packEnd: string): void => {
  Object.assign(order.packs!.at(-1)!, { packStart, packEnd });
  Object.assign(order, { packEnd, completesAt: packEnd });
};

describe('an order that is packed over several sessions (R11)', () => {
  it('is in order as it was worked out by hand', () => {
    expect(audit(spellsYard(), spellsPlan()).faults).toEqual([]);
    expect(refereePlan(spellsYard(), spellsPlan())).toEqual([]);
  });

  it.each<[string, string, OrderChange, YardChange?]>([
    ['a minute too short', 'R11', (o) => moveLast(o, april(17, '08:10'), april(17, '11:34'))],
    ['a minute too long', 'R11', (o) => moveLast(o, april(17, '08:10'), april(17, '11:36'))],
    [
      'where a session is long enough for all of it',
      'R11',
      nothing,
      (y) => Object.assign(y.extra[2]!, { end: '13:25' }),
    ],
    ['of a kit that has become quick to pack', 'R11', nothing, (y) => Object.assign(y.kits[0]!, { packMinutes: 60 })],
    [
      'with a spell of ten minutes that is not the last',
      'R11',
      (o) =>
        o.packs!.splice(
          0,
          1,
          { packStart: april(14, '18:10'), packEnd: april(14, '18:20') },
          { packStart: april(14, '18:20'), packEnd: april(14, '19:45') },
        ),
    ],
    ['from later on than its first spell', 'R11', (o) => Object.assign(o, { packStart: april(14, '18:11') })],
    ['complete before its last spell is over', 'R11', (o) => Object.assign(o, { completesAt: april(17, '11:30') })],
    ['with its spells the wrong way round', 'R11', (o) => o.packs!.reverse()],
    [
      'before its last piece is ready',
      'R11',
      (o) => {
        Object.assign(o.packs![0]!, { packStart: april(10, '11:00'), packEnd: april(10, '12:35') });
        Object.assign(o, { packStart: april(10, '11:00') });
      },
    ],
    [
      'of which some was packed before, with pieces',
      'R11',
      nothing,
      (y) => Object.assign(y.orders[0]!, { packedMinutes: 5 }),
    ],
    ['when nobody works', 'R1', (o) => moveLast(o, april(16, '08:10'), april(16, '11:35'))],
    [
      'while its one person strips',
      'R1',
      (_, plan) =>
        Object.assign(plan.strips[0]!, {
          ...{ stripStart: april(14, '19:30'), stripEnd: april(14, '19:38') },
          pieceReadyAt: april(14, '19:38'),
        }),
    ],
  ])('%s: is found', (_, rule, change, yard) => {
    const { referee, audit: audited } = found(spellsPlan, spellsYard(yard), change);
    expect(referee).toContain(rule);
    expect(audited).toContain(rule);
  });

  /* A session of 5 hours a day after its last spell: those of the 14th and the 17th have time for it sooner. */
  const long: YardChange = (y) => y.extra.push({ ...y.extra[2]!, date: '2027-04-18', end: '13:25' });

  it('may be in spells where they come to an end on an earlier hand-over day than a session that is long enough', () => {
    expect(found(spellsPlan, spellsYard(long), nothing)).toEqual(IN_ORDER);
  });

  it('may not where that is the same hand-over day, or the sessions before have no time for all of it', () => {
    const isFound = (yard: YardFile) => {
      const messages = [
        refereePlan(yard, spellsPlan()).map(({ message }) => message),
        audit(yard, spellsPlan()).faults,
      ];
      for (const list of messages)
        expect(list.filter((one) => /in spells, .* session is long enough/.test(one))).toHaveLength(1);
    };
    isFound(
      spellsYard((y) => {
        long(y);
        y.yard.handoverDays = ['SU'];
      }),
    );
    isFound(spellsYard((y) => y.extra.push({ ...y.extra[2]!, date: '2027-04-15', end: '13:25' })));
  });

  it('has to be in the plan as it was, spell by spell, where it is firm (R13)', () => {
    const { packs } = spellsPlan().orders[0]!;
    const firm = spellsYard((y) => {
      y.keep = { batches: [], pours: [], packs: packs!.map((spell) => ({ order: '27-001', ...spell })) };
    });
    expect(found(spellsPlan, firm, nothing)).toEqual(IN_ORDER);
    const later: OrderChange = (o) => moveLast(o, april(17, '08:15'), april(17, '11:40'));
    expect(found(spellsPlan, firm, later)).toEqual(both('R13'));
  });

  it('may go on in spells where some of it is packed, and asks for no pieces then', () => {
    const yard = spellBegunYard((y) => {
      delete y.begun;
      Object.assign(y.yard, { now: april(14, '18:00') });
      Object.assign(y.orders[0]!, { packedMinutes: 250 });
    });
    const inTwo: OrderChange = (o) => {
      Object.assign(o, { fromFinished: [] });
      Object.assign(o.packs![0]!, { packEnd: april(14, '18:30') });
      moveLast(o, april(17, '08:10'), april(17, '08:40'));
    };
    expect(found(spellBegunPlan, yard, inTwo)).toEqual(IN_ORDER);
  });
});

describe('an order of which a spell is under way (R14)', () => {
  it('is in order as it was worked out by hand', () => {
    expect(audit(spellBegunYard(), spellBegunPlan()).faults).toEqual([]);
    expect(refereePlan(spellBegunYard(), spellBegunPlan())).toEqual([]);
  });

  it('may be left out where no session has time for the rest', () => {
    const leftOut: OrderChange = (_, plan) => {
      Object.assign(plan, { orders: [], unplanned: [{ order: '27-001', cause: 'time', reason: 'no time' }] });
      Object.assign(plan.score, { unplannedWeight: 1, weightedCompletionDays: 0 });
    };
    expect(found(spellBegunPlan, spellBegunYard(), leftOut)).toEqual(IN_ORDER);
  });

  it.each<[string, string, OrderChange, YardChange?]>([
    [
      'complete without the rest of it',
      'R14',
      (o) => {
        const end = april(14, '19:45');
        Object.assign(o, { packEnd: end, completesAt: end, packs: undefined });
      },
    ],
    ['that has been moved', 'R14', (o) => Object.assign(o.packs![0]!, { packEnd: april(14, '19:40') })],
    ['that all of it was to be packed in', 'R14', nothing, (y) => Object.assign(y.begun!.packs![0]!, { part: false })],
    ['of other pieces', 'R14', (o) => Object.assign(o, { fromFinished: [] })],
    [
      'while its one person packs something else',
      'R1',
      (_, plan) => {
        plan.orders.push({ ...spellsPlan().orders[0]!, id: '27-003', packs: undefined, fromFinished: [] });
        const times = { packStart: april(14, '19:30'), packEnd: april(14, '19:40') };
        Object.assign(plan.orders[1]!, { ...times, completesAt: times.packEnd });
      },
      (y) => {
        y.kits.push({ id: 'box', name: 'Box', pieces: [], parts: [], cuts: [], packMinutes: 10 });
        y.orders.push({ id: '27-003', lines: [{ kit: 'box', quantity: 1 }] });
      },
    ],
  ])('%s: is found', (_, rule, change, yard) => {
    const { referee, audit: audited } = found(spellBegunPlan, spellBegunYard(yard), change);
    expect(referee).toContain(rule);
    expect(audited).toContain(rule);
  });
});
