import { describe, expect, it } from 'vitest';
import type { PlanFile } from '../../../shared/plan.ts';
import type { WeatherDay } from '../../../shared/temperature.ts';
import { readYardFile, type YardFile, type YardFileInput } from '../../../shared/yard-file.ts';
import { planYard } from '../../../src/engine/plan.ts';
import { refereePlan } from '../../../src/engine/referee.ts';
import { audit } from '../../contract/audit-plan.mjs';
import { smallYard } from '../../support/small-yard.ts';

type MixFigures = Partial<YardFileInput['mixes'][number]>;

/** One pair of panels on Saturday 10 April, 8:00 to 20:00; its mix as these figures have it, the days as these. */
const yardWith = (days: WeatherDay[], figures: MixFigures, work?: [start: string, end: string]): YardFile => {
  const yard = smallYard();
  const [start, end] = work ?? ['08:00', '20:00'];
  const read = readYardFile({
    ...yard,
    work: yard.work.map((window) => ({ ...window, start, end })),
    temperatures: [{ from: '2027-01-01', celsius: 12 }],
    weather: { days },
    mixes: yard.mixes.map((mix) => ({ ...mix, ...figures })),
  });
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return read.yard;
};

const planned = (yard: YardFile): PlanFile => planYard(yard, { effort: 'quick' });
const faultsOf = (yard: YardFile, plan: PlanFile, rule: string) => ({
  audit: audit(yard, plan).faults.some((text) => text.includes(rule)),
  referee: refereePlan(yard, plan).some((finding) => finding.rule === rule),
});
const BOTH = { audit: true, referee: true };
const allFaults = (yard: YardFile, plan: PlanFile) => [...audit(yard, plan).faults, ...refereePlan(yard, plan)];
const firstStart = (plan: PlanFile) => plan.batches[0]?.start.slice(0, 16);

const SATURDAY = '2027-04-10';

describe('batches by the hour', () => {
  // 5 °C at 5:00, 25 °C at 15:00: at 10:30 it is 15 + 10 sin(0.05 pi) = 16.56 °C, at 9:30 it is 13.44 °C.
  const warm: WeatherDay = { date: SATURDAY, minCelsius: 5, maxCelsius: 25 };

  it('wait for the hour that is warm enough for their mix', () => {
    const yard = yardWith([warm], { minCelsius: 16 });
    const plan = planned(yard);
    // The hour from 10:00 on is 16.56 °C.
    expect(firstStart(plan)).toBe('2027-04-10T10:00');
    expect(allFaults(yard, plan)).toEqual([]);
    // Deliberate fault: the same plan where 17 °C is asked for, which the hour from 11:00 has.
    expect(faultsOf(yardWith([warm], { minCelsius: 17 }), plan, 'R9')).toEqual(BOTH);
    expect(firstStart(planned(yardWith([warm], { minCelsius: 17 })))).toBe('2027-04-10T11:00');
  });

  it('are no longer mixed when it has become too hot, though the mean of the day is not', () => {
    const yard = yardWith([warm], { maxCelsius: 20 }, ['13:00', '20:00']);
    const plan = planned(yard);
    // From 25 °C at 15:00 towards 5 °C at 5:00 it is 20 °C or less from the hour of 20:00 on: too late for this session.
    expect(firstStart(plan)).toBe('2027-04-17T13:00');
    expect(allFaults(yard, plan)).toEqual([]);
    const early = planned(yardWith([warm], {}, ['13:00', '20:00']));
    expect(firstStart(early)).toBe('2027-04-10T13:24');
    expect(faultsOf(yard, early, 'R9')).toEqual(BOTH);
  });

  it('are not mixed before a night of frost that the mean of the day hides', () => {
    const night: WeatherDay = { date: '2027-04-11', minCelsius: -2, maxCelsius: 16 };
    const mix = { minCelsius: 1, protectHours: 24 };
    expect(firstStart(planned(yardWith([], mix)))).toBe('2027-04-10T08:24');
    const yard = yardWith([warm, night], mix);
    const plan = planned(yard);
    expect(firstStart(plan)).toBe('2027-04-17T08:00');
    expect(allFaults(yard, plan)).toEqual([]);
    expect(faultsOf(yard, planned(yardWith([], mix)), 'R9')).toEqual(BOTH);
  });

  it('stiffen sooner in the afternoon than in the morning of one day', () => {
    // 2 fills of 7 minutes are 14. At 5000 K a minute at 25 °C counts 1.33: a mix of 17 minutes lasts 12.7.
    const hot: WeatherDay = { date: SATURDAY, minCelsius: 10, maxCelsius: 26 };
    const afternoon = yardWith([hot], { workingMinutes: 17 }, ['13:00', '17:00']);
    const morning = yardWith([hot], { workingMinutes: 17 }, ['08:00', '12:00']);
    const two = planned(morning);
    expect(two.batches.map(({ pours }) => pours.length)).toEqual([2]);
    const single = planned(afternoon);
    expect(single.batches.map(({ pours }) => pours.length)).toEqual([1, 1]);
    expect([...allFaults(morning, two), ...allFaults(afternoon, single)]).toEqual([]);
    // Deliberate fault: the pair of one batch in the afternoon of a cool day, held against the hot one.
    const cool = planned(yardWith([], { workingMinutes: 17 }, ['13:00', '17:00']));
    expect(cool.batches.map(({ pours }) => pours.length)).toEqual([2]);
    expect(faultsOf(afternoon, cool, 'R3')).toEqual(BOTH);
  });

  it('may be stripped by the hours themselves: later after a cold morning', () => {
    const yard = yardWith([{ date: SATURDAY, minCelsius: 2, maxCelsius: 22 }], { demouldMinutes: 75 });
    const plan = planned(yard);
    const even = planned(yardWith([], { demouldMinutes: 75 }));
    expect(allFaults(yard, plan)).toEqual([]);
    expect(faultsOf(yard, even, 'R7')).toEqual(BOTH);
  });
});
