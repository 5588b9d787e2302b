import type { PlanFile } from '../../shared/plan.ts';
import type { YardFile, YardFileInput } from '../../shared/yard-file.ts';
import { handMadePlan, handMadeYard } from './hand-made-plan.ts';

const april = (day: number, clock: string) => `2027-04-${String(day).padStart(2, '0')}T${clock}:00+01:00`;

/** The hand-made yard with one Saturday more, 17 April, and a pair that takes 300 minutes to pack: no session is longer than 275. */
export const spellsYard = (change: (input: YardFileInput) => void = () => {}): YardFile =>
  handMadeYard((y) => {
    y.kits[0]!.packMinutes = 300;
    y.extra.push({ date: '2027-04-17', start: '08:00', end: '13:00' });
    change(y);
  });

const WEDNESDAY = { packStart: april(14, '18:10'), packEnd: april(14, '19:45') };
const SATURDAY = { packStart: april(17, '08:10'), packEnd: april(17, '11:35') };

/** Its plan by hand: all of Wednesday, 95 minutes, and 205 on Saturday, the day it is handed over. */
export const spellsPlan = (): PlanFile => {
  const plan = handMadePlan();
  Object.assign(plan.orders[0]!, {
    ...{ packStart: WEDNESDAY.packStart, packEnd: SATURDAY.packEnd, completesAt: SATURDAY.packEnd },
    packs: [{ ...WEDNESDAY }, { ...SATURDAY }],
  });
  return plan;
};

/** The same on Wednesday at 18:30: two panels are taken, and the first spell is under way. There is nothing else to do. */
export const spellBegunYard = (change: (input: YardFileInput) => void = () => {}): YardFile =>
  spellsYard((y) => {
    Object.assign(y.yard, { now: april(14, '18:30') });
    Object.assign(y, { inMould: [], finished: [{ casting: 'panel', count: 2 }], orders: y.orders.slice(0, 1) });
    y.begun = { packs: [{ order: '27-001', ...WEDNESDAY, fromFinished: [{ finished: 0, count: 2 }], part: true }] };
    change(y);
  });

/** Its plan by hand: the spell under way, and the rest on Saturday, 3 days from today. */
export const spellBegunPlan = (): PlanFile => {
  const { orders, ...plan } = spellsPlan();
  return {
    ...plan,
    ...{ batches: [], pours: [], coats: [], strips: [], sticks: [], buys: [] },
    orders: [{ ...orders[0]!, fromFinished: [{ finished: 0, count: 2 }] }],
    score: { ...plan.score, batches: 0, bags: 0, weightedCompletionDays: 3 },
  };
};
