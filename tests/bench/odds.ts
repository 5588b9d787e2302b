import { dateOfDay, dayNumber } from '../../shared/time.ts';
import type { YardFile } from '../../shared/yard-file.ts';
import type { YardRecord } from '../../shared/yard-record.ts';
import { dateOdds, dayWith } from '../../src/engine/odds/date-odds.ts';
import { wilson } from '../../src/engine/odds/wilson.ts';
import { planWithMemory } from '../../src/engine/plan.ts';
import { type Dice, diceOf } from '../support/random-yard/dice.ts';
import { scaledYard } from '../support/scaled-yard.ts';
import { smallYard } from '../support/small-yard.ts';
import { median, ms, type Row, timed } from './table.ts';

const FIRST = '2027-04-08';
const SHARES = [1 / 2, 8 / 10, 9 / 10, 19 / 20];
const WORDS = ['1 in 2', '8 in 10', '9 in 10', '19 in 20'];
const RECORDED = { pieces: 300, sessions: 120 };
const DRAWS = 200;
const SEED = 20_000;

/** What a yard is like, which the program is not told. */
interface Hidden {
  moulds: number;
  /** Pieces of the one order. */
  pieces: number;
  notGood: number;
  lost: number;
}

const hiddenOf = (dice: Dice): Hidden => ({
  moulds: dice.whole(1, 2),
  pieces: dice.whole(2, 16),
  notGood: dice.whole(10, 150) / 1000,
  lost: dice.whole(10, 150) / 1000,
});

const percent = (share: number): string => `${(100 * share).toFixed(1)} %`;

/** A mould or two of one panel: a session has time to empty and fill them all, and a bag does for both. One session a day. */
const yardOf = ({ moulds, pieces }: Hidden): YardFile => {
  const { yard, mixes, materials, moulds: some } = smallYard();
  return smallYard({
    yard: { ...yard, now: `${FIRST}T07:00:00+01:00`, handoverDays: undefined },
    work: [{ rule: 'FREQ=DAILY', from: '2027-01-02', start: '08:00', end: '12:00' }],
    mixes: [{ ...mixes[0]!, demouldMinutes: 600 }],
    materials: [{ ...materials[0]!, onHand: 1000 }, materials[1]!],
    moulds: Array.from({ length: moulds }, (_, n) => ({ ...some[0]!, id: `900 no. ${n + 1}` })),
    orders: [{ id: 'asked', lines: [{ casting: 'panel-900', quantity: pieces }] }],
  });
};

const timesIn = (dice: Dice, share: number, of: number): number =>
  Array.from({ length: of }, () => Number(dice.chance(share))).reduce((sum, one) => sum + one, 0);

/** What such a yard has on record by then. */
const recordOf = (dice: Dice, { moulds, notGood, lost }: Hidden): YardRecord => ({
  pieces: Array.from({ length: moulds }, (_, n) => {
    const of = Math.round(RECORDED.pieces / moulds);
    return { mould: `900 no. ${n + 1}`, casting: 'panel-900', of, mend: 0, scrap: timesIn(dice, notGood, of) };
  }),
  sessions: { bad: timesIn(dice, lost, RECORDED.sessions), of: RECORDED.sessions },
  deliveries: [],
});

/**
 * The day on which the order is ready, as it comes: in each session all moulds are emptied, and as many filled as pieces are
 * lacking. Shares nothing with the program.
 */
const readyOn = (dice: Dice, { moulds, pieces, notGood, lost }: Hidden): string => {
  let [good, inMoulds] = [0, 0];
  for (let day = dayNumber(FIRST); ; day++) {
    if (dice.chance(lost)) continue;
    for (; inMoulds > 0; inMoulds--) if (!dice.chance(notGood)) good++;
    if (good === pieces) return dateOfDay(day);
    inMoulds = Math.min(moulds, pieces - good);
  }
};

/** A day that was said with odds: how often it was to be kept by the program, and whether it was. */
interface Said {
  level: number;
  share: number;
  isKept: boolean;
}

const saidIn = (n: number): Said[] => {
  const hidden = hiddenOf(diceOf(SEED + n));
  const [yard, record] = [yardOf(hidden), recordOf(diceOf(SEED * 2 + n), hidden)];
  const ready = readyOn(diceOf(SEED * 3 + n), hidden);
  const { memory } = planWithMemory(yard, { effort: 'quick' });
  const odds = dateOdds({ yard, order: 'asked', memory, record, draws: DRAWS, seed: n });
  if (!odds) return [];
  return SHARES.flatMap((wanted, level) => {
    const on = dayWith(odds, wanted);
    if (on === null) return [];
    const { by } = odds.days.find((day) => day.on === on)!;
    return [{ level, share: by / odds.draws, isKept: ready <= on }];
  });
};

/**
 * `npm run bench -- odds [yards]`: days said with odds in yards whose shares the program learns from a record, against what then
 * came, with Wilson's 95 % interval. A day is the first with such odds or better, so that what was said is more on average.
 */
export const oddsRows = (yards: number): Row[] => {
  const said = Array.from({ length: yards }, (_, n) => saidIn(n)).flat();
  return WORDS.map((words, level) => {
    const own = said.filter((one) => one.level === level);
    const kept = own.filter(({ isKept }) => isKept).length;
    const { from, to } = wilson(kept, own.length);
    const average = own.reduce((sum, { share }) => sum + share, 0) / own.length;
    return {
      what: `${words}: ${own.length} days, said ${percent(average)} on average`,
      figure: `kept ${percent(kept / own.length)}, between ${percent(from)} and ${percent(to)}`,
      aim: 'what was said',
    };
  });
};

/** Milliseconds for the odds of one order, the last of so many, in a yard as large. */
export const oddsSpeedRows = (): Row[] =>
  [
    { orders: 15, moulds: 20, aim: '300 ms' },
    { orders: 120, moulds: 40, aim: '2 s' },
  ].map(({ orders, moulds, aim }) => {
    const yard = scaledYard(orders, moulds);
    const { plan, memory } = planWithMemory(yard, { effort: 'quick' });
    const last = plan.orders.reduce((a, b) => (b.completesAt > a.completesAt ? b : a));
    const record = recordOf(diceOf(SEED), { moulds: 1, pieces: 1, notGood: 0.05, lost: 0.05 });
    const took = timed(3, 1, () => dateOdds({ yard, order: last.id, memory, record }));
    const pours = plan.pours.length;
    return { what: `odds of the last of ${orders} orders, ${pours} pours`, figure: ms(median(took)), aim };
  });
