import { describe, expect, it } from 'vitest';
import type { DroppedTask, PlanFile } from '../../../shared/plan.ts';
import type { YardFile, YardFileInput } from '../../../shared/yard-file.ts';
import { refereePlan } from '../../../src/engine/referee.ts';
import { audit } from '../../contract/audit-plan.mjs';
import { begunPlan, begunYard } from '../../support/hand-made-begun.ts';
import { handMadePlan, handMadeYard } from '../../support/hand-made-plan.ts';

type YardChange = (input: YardFileInput) => void;
type PlanChange = (plan: PlanFile) => void;
const nothing = () => {};

const saturday = (clock: string) => `2027-04-10T${clock}:00+01:00`;
const set = <T extends object>(record: T, values: { [K in keyof T]?: T[K] | undefined }): void => {
  Object.assign(record, values);
};
const drop = (record: object, key: string): void => {
  Reflect.deleteProperty(record, key);
};

/** The rules that the referee says are broken, and those that the independent check says are. */
const rulesOf = (yard: YardFile, plan: PlanFile) => ({
  referee: [...new Set(refereePlan(yard, plan).map((x) => x.rule))],
  audit: [...new Set(audit(yard, plan).faults.map((x) => x.split(' ')[0]!))],
});
const changed = (plan: PlanFile, change: PlanChange): PlanFile => {
  change(plan);
  return plan;
};
const begun = (plan: PlanChange, yard: YardChange = nothing) => rulesOf(begunYard(yard), changed(begunPlan(), plan));
const firm = (plan: PlanChange, yard: YardChange = nothing) =>
  rulesOf(handMadeYard(yard), changed(handMadePlan(), plan));

const IN_ORDER = { referee: [], audit: [] };

describe('work under way (R14)', () => {
  it('is in the plan as it was, beside what is planned', () => {
    expect(audit(begunYard(), begunPlan()).faults).toEqual([]);
    expect(refereePlan(begunYard(), begunPlan())).toEqual([]);
  });

  /** The pour in mould B that is under way stays in it, so that there is one panel too few for the pair. */
  const staysInB: PlanChange = (p) => {
    p.unstripped.push({ mould: 'B', reason: 'no session within the plan has time to strip it' });
    for (const x of p.pours) drop(x, 'order');
    p.orders.shift();
    p.unplanned.push({ order: '27-001', cause: 'time', reason: 'no time' });
    p.sticks.pop();
    set(p.score, { unplannedWeight: 1, weightedCompletionDays: 0 });
  };
  /** The set-up of D was for a coping, which nobody needs: 9 minutes to change over, 12 to prepare. */
  const forACoping: YardChange = (y) => {
    y.castings.push({ ...y.castings[0]!, id: 'coping' });
    y.moulds[3]!.makes = [{ casting: 'panel', changeMinutes: 9 }, { casting: 'coping' }];
    y.begun!.preps![0]!.casting = 'coping';
  };

  it.each<[string, PlanChange, YardChange?]>([
    ['more people than there are', nothing, (y) => set(y.extra[0]!, { crew: 1 })],
    ['when nobody works any more', nothing, (y) => set(y.extra[0]!, { start: '09:25', crew: 2 })],
    ['in a mould that is damaged since', nothing, (y) => set(y.moulds[0]!, { condition: 'damaged' })],
    [
      'a strip before its time',
      (p) => set(p.strips[0]!, { pieceReadyAt: '2027-04-11T09:13:00+01:00' }),
      (y) => {
        set(y.inMould[0]!, { filledAt: saturday('09:13') });
        set(y.yard, { rackSpaces: 4 });
      },
    ],
    ['on a day that is too cold for it since', nothing, (y) => set(y.mixes[0]!, { minCelsius: -5, maxCelsius: 20 })],
    ['a packing before its order may be packed', nothing, (y) => set(y.orders[2]!, { notBefore: '2027-04-20' })],
    [
      'a packing of more pieces than the order asks for now',
      nothing,
      (y) => set(y.orders[2]!, { lines: [{ casting: 'panel', quantity: 1 }] }),
    ],
    ['a pour that no session has time to strip', staysInB],
    [
      'a set-up after which nothing is poured there',
      (p) => {
        p.batches.pop();
        p.pours.pop();
        p.buys.pop();
        p.sticks.shift();
        set(p.score, { batches: 1, bags: 1 });
      },
    ],
    [
      'a set-up for another piece',
      (p) => {
        set(p.batches[1]!, { start: saturday('09:45'), mixEnd: saturday('09:55'), end: saturday('10:07') });
        set(p.pours[2]!, {
          prepStart: saturday('09:22'),
          prepEnd: saturday('09:43'),
          fillStart: saturday('09:55'),
          fillEnd: saturday('10:02'),
          stripStart: saturday('11:17'),
          stripEnd: saturday('11:25'),
          pieceReadyAt: '2027-04-11T10:02:00+01:00',
        });
      },
      forACoping,
    ],
  ])('may go on: %s', (_, plan, yard) => {
    expect(begun(plan, yard)).toEqual(IN_ORDER);
  });

  it.each<[rule: string, what: string, plan: PlanChange, yard?: YardChange]>([
    ['R14', 'a batch that began later', (p) => set(p.batches[0]!, { start: saturday('09:13') })],
    ['R14', 'a batch that is mixed for longer', (p) => set(p.batches[0]!, { mixEnd: saturday('09:19') })],
    ['R14', 'a batch of more bags', (p) => set(p.batches[0]!, { bags: 2 })],
    ['R14', 'a pour in another mould', (p) => set(p.pours[0]!, { mould: 'C' })],
    ['R14', 'a pour filled later', (p) => set(p.pours[1]!, { fillEnd: saturday('09:33') })],
    [
      'R14',
      'a batch forgotten',
      (p) => {
        p.batches.shift();
        p.pours.splice(0, 2);
      },
    ],
    ['R13', 'a batch given up', (p) => p.dropped.push({ batch: 'B1', at: saturday('09:08'), reason: 'no time' })],
    [
      'R14',
      'a pour before the one under way',
      (p) => set(p.pours[2]!, { mould: 'B', fillStart: saturday('09:20'), fillEnd: saturday('09:24') }),
    ],
    ['R14', 'a pour that stays in its mould for somebody', (p) => p.unstripped.push({ mould: 'B', reason: 'no time' })],
    [
      'R14',
      'a pour that stays in its mould with another strip',
      (p) => {
        staysInB(p);
        set(p.pours[1]!, { stripEnd: saturday('11:00') });
      },
    ],
    ['R14', 'a strip at another time', (p) => set(p.strips[0]!, { stripEnd: saturday('09:23') })],
    ['R14', 'a strip put off', (p) => set(p, { strips: [], unstripped: [{ mould: 'C', reason: 'no time' }] })],
    ['R14', 'a packing that takes longer', (p) => set(p.orders[2]!, { packEnd: saturday('09:23') })],
    ['R14', 'a packing of fewer pieces', (p) => set(p.orders[2]!, { fromFinished: [{ finished: 1, count: 1 }] })],
    ['R14', 'a packing of a piece more', (p) => set(p.pours[2]!, { order: '27-003' })],
    [
      'R14',
      'an order being packed left out',
      (p) => {
        p.orders.pop();
        p.unplanned.push({ order: '27-003', cause: 'time', reason: 'no time' });
      },
    ],
    [
      'R14',
      'a set-up begun again',
      (p) => set(p.pours[2]!, { prepStart: saturday('09:22'), prepEnd: saturday('09:34') }),
    ],
    ['R1', 'a set-up that had not begun', nothing, (y) => set(y.begun!, { preps: [] })],
    ['R1', 'a strip that had not begun', nothing, (y) => set(y.begun!, { strips: [] })],
    [
      'R1',
      'another batch while the only person is at the first',
      (p) => {
        set(p.batches[1]!, { start: saturday('09:36'), mixEnd: saturday('09:46'), end: saturday('09:58') });
        set(p.pours[2]!, { fillStart: saturday('09:46'), fillEnd: saturday('09:53') });
      },
      (y) => set(y.extra[0]!, { crew: 1 }),
    ],
    [
      'R1',
      'other work while a set-up that nobody pours after takes the last person',
      (p) => set(p.pours[2]!, { mould: 'A', prepStart: saturday('09:21'), prepEnd: saturday('09:33') }),
      (y) => set(y.extra[0]!, { crew: 4 }),
    ],
    [
      'R2',
      'another batch while the mixer is busy',
      (p) => set(p.batches[0]!, { mixEnd: saturday('09:45') }),
      (y) => set(y.begun!.batches![0]!, { mixEnd: saturday('09:45') }),
    ],
    ['R5', 'a mould that the batch under way is in', (p) => set(p.pours[2]!, { mould: 'B' })],
    ['R8', 'room on the rack', nothing, (y) => set(y.yard, { rackSpaces: 2 })],
    ['R10', 'a bag bought for the batch under way', (p) => set(p.buys[0]!, { quantity: 2 })],
    [
      'R10',
      'sleeves cut for the batch under way',
      (p) => p.sticks[0]!.cuts.push({ lengthMm: 190, count: 4, for: 'B1' }),
    ],
    [
      'R10',
      'pins cut for the order that is being packed',
      (p) => p.sticks[1]!.cuts.push({ lengthMm: 300, count: 4, for: '27-003' }),
    ],
    ['R10', 'less than is kept from now on', nothing, (y) => set(y.materials[0]!, { minimum: 1 })],
  ])('%s: %s', (rule, _, plan, yard) => {
    const { referee, audit } = begun(plan, yard);
    expect(referee).toContain(rule);
    expect(audit).toContain(rule);
  });
});

describe('firm strips, packings and set-ups (R13)', () => {
  /** All that the plan by hand has is fixed. */
  const all =
    (change: (kept: NonNullable<YardFileInput['keep']>) => void = nothing): YardChange =>
    (y) => {
      const { batches, pours, strips } = handMadePlan();
      const [a, b] = pours;
      y.keep = {
        batches,
        pours,
        strips: [
          { mould: 'A', pour: 'P1', stripStart: a!.stripStart, stripEnd: a!.stripEnd },
          { mould: 'B', pour: 'P2', stripStart: b!.stripStart, stripEnd: b!.stripEnd },
          { mould: 'C', stripStart: strips[0]!.stripStart, stripEnd: strips[0]!.stripEnd },
        ],
        packs: [{ order: '27-001', packStart: '2027-04-14T18:10:00+01:00', packEnd: '2027-04-14T18:15:00+01:00' }],
        preps: [{ mould: 'B', casting: 'panel', prepStart: b!.prepStart, prepEnd: b!.prepEnd }],
      };
      change(y.keep);
    };
  const dropped =
    (task: Omit<DroppedTask, 'reason'>): PlanChange =>
    (p) => {
      p.dropped.push({ ...task, reason: 'no time' });
    };
  const laterStrip = all((k) => set(k.strips![0]!, { stripStart: saturday('10:56'), stripEnd: saturday('11:04') }));

  it('stay as they are', () => {
    expect(firm(nothing, all())).toEqual(IN_ORDER);
  });

  it('are given up by kind, name and start', () => {
    expect(firm(dropped({ strip: 'A', at: saturday('10:56') }), laterStrip)).toEqual(IN_ORDER);
    const others = all((k) => {
      set(k.packs![0]!, { packStart: '2027-04-14T18:20:00+01:00', packEnd: '2027-04-14T18:25:00+01:00' });
      set(k.preps![0]!, { mould: 'A' });
      set(k.strips![2]!, { mould: 'A' });
    });
    const gone: PlanChange = (p) => {
      dropped({ pack: '27-001', at: '2027-04-14T18:20:00+01:00' })(p);
      dropped({ prep: 'A', at: saturday('08:56') })(p);
      dropped({ strip: 'A', at: saturday('08:38') })(p);
    };
    expect(firm(gone, others)).toEqual(IN_ORDER);
  });

  it.each<[what: string, plan: PlanChange, yard: YardChange]>([
    ['a strip at another time', nothing, laterStrip],
    [
      'a strip of a piece that was in its mould',
      nothing,
      all((k) => set(k.strips![2]!, { stripEnd: saturday('08:47') })),
    ],
    ['a strip in another mould than its pour', nothing, all((k) => set(k.strips![0]!, { mould: 'B' }))],
    ['a strip of a pour that is gone', nothing, all((k) => drop(k.strips![0]!, 'pour'))],
    ['a packing at another time', nothing, all((k) => set(k.packs![0]!, { packStart: '2027-04-14T18:09:00+01:00' }))],
    ['a packing of another order', nothing, all((k) => set(k.packs![0]!, { order: '27-002' }))],
    ['a set-up at another time', nothing, all((k) => set(k.preps![0]!, { prepEnd: saturday('08:39') }))],
    ['a set-up of another mould', nothing, all((k) => set(k.preps![0]!, { mould: 'C' }))],
    ['a strip given up by another start', dropped({ strip: 'A', at: saturday('10:57') }), laterStrip],
    ['a strip given up as a set-up', dropped({ prep: 'A', at: saturday('10:56') }), laterStrip],
    ['a packing given up that was not fixed', dropped({ pack: '27-002', at: saturday('10:56') }), all()],
    ['a batch given up, and yet there', dropped({ batch: 'B1', at: saturday('09:08') }), all()],
  ])('%s is found', (_, plan, yard) => {
    const { referee, audit } = firm(plan, yard);
    expect(referee).toContain('R13');
    expect(audit).toContain('R13');
  });

  it.each<[string, PlanChange]>([
    ['no task', (p) => p.dropped.push({ at: saturday('10:56'), reason: 'no time' })],
    ['two tasks', dropped({ strip: 'A', pack: '27-001', at: saturday('10:56') })],
    ['no instant', dropped({ strip: 'A', at: '2027-04-10' })],
    ['no reason', (p) => p.dropped.push({ strip: 'A', at: saturday('10:56'), reason: '' })],
  ])('what is given up with %s has no form', (_, plan) => {
    expect(firm(plan, laterStrip)).toEqual({ referee: ['R0'], audit: ['R0'] });
  });
});

describe('dates wanted, and days before which nothing is poured', () => {
  const wanted =
    (date: string): YardChange =>
    (y) =>
      set(y.orders[0]!, { wanted: date });
  const score =
    (weightedDaysAfterWanted: number): PlanChange =>
    (p) =>
      set(p.score, { weightedDaysAfterWanted });

  it('are counted beside the date given', () => {
    expect(firm(score(2), wanted('2027-04-15'))).toEqual(IN_ORDER);
    expect(firm(score(0), wanted('2027-04-17'))).toEqual(IN_ORDER);
    expect(firm(nothing, wanted('2027-04-15'))).toEqual({ referee: ['R0'], audit: ['R0'] });
    expect(firm(score(1), wanted('2027-04-17'))).toEqual({ referee: ['R0'], audit: ['R0'] });
  });

  const notBefore =
    (order: number, date: string): YardChange =>
    (y) =>
      set(y.orders[order]!, { notBefore: date });

  it('a pour on the very day is in order, and so is a piece that is there', () => {
    expect(firm(nothing, notBefore(0, '2027-04-10'))).toEqual(IN_ORDER);
    expect(firm(nothing, notBefore(1, '2027-05-10'))).toEqual(IN_ORDER);
  });

  it('a pour before it is found, and a packing', () => {
    expect(firm(nothing, notBefore(0, '2027-04-11'))).toEqual({ referee: ['R11'], audit: ['R11'] });
    const packed: PlanChange = (p) => {
      set(p.orders[2]!, { packStart: saturday('09:25'), packEnd: saturday('09:30'), completesAt: saturday('09:30') });
      set(p.sticks[1]!, { openedAt: saturday('09:25') });
      p.sticks[1]!.cuts.push({ lengthMm: 300, count: 4, for: '27-003' });
    };
    const laterPack: YardChange = (y) => set(y.begun!, { packs: [] });
    const tooEarly: YardChange = (y) => {
      laterPack(y);
      notBefore(2, '2027-04-11')(y);
    };
    expect(begun(packed, laterPack)).toEqual(IN_ORDER);
    expect(begun(packed, tooEarly)).toEqual({ referee: ['R11'], audit: ['R11'] });
  });
});

describe('a material that is there the day it is bought', () => {
  it('may be short until then: what is bought today is there now', () => {
    const yard: YardChange = (y) => set(y.materials[3]!, { leadDays: 0, minimum: 3 });
    const plan: PlanChange = (p) =>
      p.buys.push(
        { material: 'rod', quantity: 2, orderBy: '2027-04-08', arrivesOn: '2027-04-08' },
        { material: 'rod', quantity: 1, orderBy: '2027-04-14', arrivesOn: '2027-04-14' },
      );
    expect(firm(plan, yard)).toEqual(IN_ORDER);
    expect(firm(nothing, yard)).toEqual({ referee: ['R10'], audit: ['R10'] });
  });
});
