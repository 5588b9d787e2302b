import type { PlanFile } from '../../shared/plan.ts';
import type { YardFile, YardFileInput } from '../../shared/yard-file.ts';
import { handMadePlan, handMadeYard } from './hand-made-plan.ts';

const saturday = (clock: string) => `2027-04-10T${clock}:00+01:00`;

/**
 * The hand-made yard on its Saturday, at 09:20, with three people and four things under way: the batch of the plan by hand
 * since 09:08, the strip of mould C since 09:14, a set-up of a fourth mould, D, since 09:10, and since 09:17 the packing
 * of one more order, a pair out of two finished panels. That is one person too many for two minutes, and stays. What
 * they take is out of the book: there is no mortar, and another bag can be bought for today.
 */
export const begunYard = (change: (input: YardFileInput) => void = () => {}): YardFile =>
  handMadeYard((y) => {
    const { batches, pours } = handMadePlan();
    Object.assign(y.yard, { now: saturday('09:20'), rackSpaces: 3 });
    y.extra[0]!.crew = 3;
    y.materials[0]!.leadDays = 0;
    y.moulds.push({ id: 'D', makes: [{ casting: 'panel' }], setFor: 'panel', condition: 'ready' });
    y.finished.push({ casting: 'panel', count: 2 });
    y.orders.push({ id: '27-003', lines: [{ kit: 'pair', quantity: 1 }] });
    y.begun = {
      batches,
      pours,
      strips: [{ mould: 'C', stripStart: saturday('09:14'), stripEnd: saturday('09:22') }],
      packs: [
        {
          order: '27-003',
          packStart: saturday('09:17'),
          packEnd: saturday('09:22'),
          fromFinished: [{ finished: 1, count: 2 }],
        },
      ],
      preps: [{ mould: 'D', casting: 'panel', prepStart: saturday('09:10'), prepEnd: saturday('09:22') }],
    };
    change(y);
  });

/**
 * Its plan, by hand. What has begun ends as it was to (the coat of mould B was given before), and the batch's two pieces come out and are packed as before. A
 * second batch for mould D: mixed 09:40 to 09:50, filled to 09:57, washed out by 10:02, stripped 75 minutes later at 11:12,
 * and for stock; one bag for it is bought today, and a pipe is opened for its 2 sleeves. The pair that is planned is handed over in 7 days, the two other
 * orders today.
 */
export const begunPlan = (): PlanFile => {
  const plan = { ...handMadePlan(), coats: [] };
  plan.batches.push({
    id: 'B2',
    mix: 'thin',
    start: saturday('09:40'),
    mixEnd: saturday('09:50'),
    end: saturday('10:02'),
    bags: 1,
    kg: 13.6,
    pours: ['P3'],
  });
  plan.pours.push({
    id: 'P3',
    batch: 'B2',
    mould: 'D',
    casting: 'panel',
    prepStart: saturday('09:10'),
    prepEnd: saturday('09:22'),
    fillStart: saturday('09:50'),
    fillEnd: saturday('09:57'),
    stripStart: saturday('11:12'),
    stripEnd: saturday('11:20'),
    pieceReadyAt: '2027-04-11T09:57:00+01:00',
  });
  Object.assign(plan.strips[0]!, {
    stripStart: saturday('09:14'),
    stripEnd: saturday('09:22'),
    pieceReadyAt: saturday('09:22'),
  });
  plan.orders[1]!.completesAt = saturday('09:20');
  plan.orders.push({
    id: '27-003',
    packStart: saturday('09:17'),
    packEnd: saturday('09:22'),
    completesAt: saturday('09:22'),
    completesOn: '2027-04-10',
    daysLate: 0,
    fromFinished: [{ finished: 1, count: 2 }],
  });
  Object.assign(plan.sticks[0]!, { openedAt: saturday('09:40'), cuts: [{ lengthMm: 190, count: 2, for: 'B2' }] });
  Object.assign(plan.buys[0]!, { orderBy: '2027-04-10' });
  Object.assign(plan.score, { batches: 2, bags: 2, weightedCompletionDays: 7 });
  return plan;
};
