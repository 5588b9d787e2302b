import { describe, expect, it } from 'vitest';
import type { PlanFile } from '../../../shared/plan.ts';
import type { YardFile, YardFileInput } from '../../../shared/yard-file.ts';
import { planYard } from '../../../src/engine/plan.ts';
import { refereePlan } from '../../../src/engine/referee.ts';
import { audit } from '../../contract/audit-plan.mjs';
import { handMadePlan, handMadeYard } from '../../support/hand-made-plan.ts';

/** Wednesday begins 101 hours after Saturday ends, and its first minute for tasks is 18:10. */
const wetFor = (hours: number, minutes: number, change: (yard: YardFileInput) => void = () => {}): YardFile =>
  handMadeYard((yard) => {
    yard.mixes[0]!.wetCure = { hours, minutes };
    change(yard);
  });

const packedAt = (start: string, end: string): PlanFile => {
  const plan = handMadePlan();
  const [packStart, packEnd] = [start, end].map((clock) => `2027-04-14T${clock}:00+01:00`);
  plan.orders[0] = { ...plan.orders[0]!, packStart: packStart!, packEnd: packEnd!, completesAt: packEnd! };
  plan.sticks[1]!.openedAt = packStart!;
  return plan;
};

const rulesOf = (yard: YardFile, plan: PlanFile) => ({
  audit: audit(yard, plan).faults.map((text) => text.slice(0, 2)),
  referee: refereePlan(yard, plan).map(({ rule }) => rule),
});
const BROKEN = { audit: ['R1'], referee: ['R1'] };
const IN_ORDER = { audit: [], referee: [] };

describe('minutes to keep pieces wet', () => {
  it('are nobody’s who packs alone at the beginning of a session', () => {
    expect(rulesOf(wetFor(102, 10), packedAt('18:10', '18:15'))).toEqual(BROKEN);
    expect(rulesOf(wetFor(102, 10), packedAt('18:19', '18:24'))).toEqual(BROKEN);
    expect(rulesOf(wetFor(102, 10), packedAt('18:20', '18:25'))).toEqual(IN_ORDER);
  });

  it('are asked for in sessions that begin within the hours of the mix, and in no other', () => {
    expect(rulesOf(wetFor(101, 10), packedAt('18:10', '18:15'))).toEqual(IN_ORDER);
    const lookedInto = (yard: YardFileInput) => {
      yard.extra = yard.extra!.map((window, i) =>
        i === 0 ? { ...window, allows: ['prep', 'batch', 'pack'] } : window,
      );
      yard.extra.push({ date: '2027-04-10', start: '08:00', end: '12:59', allows: ['strip'], crew: 0 });
    };
    // What allows the strip ends a minute sooner.
    expect(rulesOf(wetFor(102, 10, lookedInto), packedAt('18:10', '18:15'))).toEqual(BROKEN);
    expect(rulesOf(wetFor(101, 10, lookedInto), packedAt('18:10', '18:15'))).toEqual(IN_ORDER);
  });

  it('go by hours of before today as well, and by days off', () => {
    const thursday = (yard: YardFileInput) => {
      yard.work = [{ rule: 'FREQ=DAILY;COUNT=1', from: '2027-04-07', start: '18:00', end: '20:00' }];
    };
    // Saturday begins 60 hours after Wednesday the 7th ended; the coat of 8:10 is in the way then.
    expect(rulesOf(wetFor(61, 10, thursday), handMadePlan())).toEqual(BROKEN);
    expect(rulesOf(wetFor(60, 10, thursday), handMadePlan())).toEqual(IN_ORDER);
    const off = (yard: YardFileInput) => {
      thursday(yard);
      yard.closed = ['2027-04-07'];
    };
    expect(rulesOf(wetFor(61, 10, off), handMadePlan())).toEqual(IN_ORDER);
  });

  it('take one of two people, and none where no mould makes pieces of the mix', () => {
    const two = (yard: YardFileInput) => {
      yard.extra![1]!.crew = 2;
    };
    expect(rulesOf(wetFor(102, 10, two), packedAt('18:10', '18:15'))).toEqual(IN_ORDER);
    const other = (yard: YardFileInput) => {
      const { wetCure: _wet, ...mix } = yard.mixes[0]!;
      yard.mixes = [mix, { ...yard.mixes[0]!, id: 'unused' }];
    };
    expect(rulesOf(wetFor(102, 10, other), packedAt('18:10', '18:15'))).toEqual(IN_ORDER);
  });

  it('are left free by plans', () => {
    const packing = (minutes: number, wet: number) => {
      const long = (yard: YardFileInput) => {
        yard.kits[0]!.packMinutes = minutes;
      };
      const yard = wet === 0 ? handMadeYard(long) : wetFor(102, wet, long);
      const plan = planYard(yard, { effort: 'quick' });
      expect(rulesOf(yard, plan)).toEqual(IN_ORDER);
      return plan.orders.map(({ packStart }) => packStart?.slice(11, 16)).filter(Boolean);
    };
    // The time for tasks is 95 minutes.
    expect(packing(95, 0)).toEqual(['18:10']);
    expect(packing(85, 10)).toEqual(['18:20']);
    expect(packing(86, 10)).toEqual([]);
  });
});
