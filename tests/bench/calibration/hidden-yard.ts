import { dateOfDay, dayNumber } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import type { YardRecord } from '../../../shared/yard-record.ts';
import { type Dice, diceOf } from '../../support/random-yard/dice.ts';
import { smallYard } from '../../support/small-yard.ts';
import { diceFor } from '../season/chance.ts';

/** What a yard is like, which the program is not told. */
export interface Hidden {
  seed: number;
  /** By mould: how often a piece of it is not good. */
  notGood: ReadonlyMap<string, number>;
  lost: number;
  late: number;
  /** A mould breaks on one day in so many, and is mended six days later; never where there is none. */
  breaksEveryDays: number | null;
  /** Pieces asked for a day, on average. */
  asked: number;
}

/** A yard with what is hidden of it, and what it has on record when the program first sees it. */
export interface HiddenYard {
  hidden: Hidden;
  yard: YardFile;
  record: YardRecord;
}

const FIRST = '2027-04-05';
const RECORDED = { pieces: 260, sessions: 110, deliveries: 30 };
const CASTINGS = ['panel-900', 'panel-600'] as const;
/** Days of work in a week, and the rule of them. */
const WEEKS = [
  { days: 5, rule: 'FREQ=WEEKLY;BYDAY=MO,TU,WE,TH,FR' },
  { days: 3, rule: 'FREQ=WEEKLY;BYDAY=TU,TH,SA' },
  { days: 2, rule: 'FREQ=WEEKLY;BYDAY=WE,SA' },
] as const;
const HANDOVERS = [undefined, undefined, ['SA'], ['WE', 'SA']] as const;
/** Share of what moulds can make that is asked for. */
const LOADS = [0.5, 0.65, 0.8] as const;

const timesIn = (dice: Dice, share: number, of: number): number =>
  Array.from({ length: of }, () => Number(dice.chance(share))).reduce((sum, one) => sum + one, 0);

const recordOf = (dice: Dice, { notGood, lost, late }: Hidden, yard: YardFile): YardRecord => ({
  pieces: yard.moulds.map(({ id, makes }) => {
    const of = Math.round(RECORDED.pieces / yard.moulds.length);
    return { mould: id, casting: makes[0]!.casting, of, mend: 0, scrap: timesIn(dice, notGood.get(id)!, of) };
  }),
  sessions: { bad: timesIn(dice, lost, RECORDED.sessions), of: RECORDED.sessions },
  deliveries: [
    {
      supplier: 'Merchant',
      of: RECORDED.deliveries,
      daysLate: Array.from({ length: timesIn(dice, late, RECORDED.deliveries) }, () => dice.whole(1, 5)),
    },
  ],
});

/**
 * A small yard by a number: two to five moulds of two panels, a turn a session, worked two to five days a week. What is asked of it
 * is half to four fifths of what its moulds can make, so that orders wait for one another.
 */
export const hiddenYard = (seed: number, breaks: boolean): HiddenYard => {
  const dice = diceOf(40_000 + seed);
  const { yard, mixes, materials, castings, moulds: some } = smallYard();
  const week = dice.pick(WEEKS);
  const moulds = Array.from({ length: dice.whole(2, 5) }, (_, n) => {
    const casting = n === 1 ? CASTINGS[1] : n === 0 ? CASTINGS[0] : dice.pick(CASTINGS);
    return { ...some[0]!, id: `${casting} no. ${n + 1}`, makes: [{ casting, changeMinutes: 0 }], setFor: casting };
  });
  const usual = dice.whole(10, 100) / 1000;
  const hidden: Hidden = {
    seed,
    notGood: new Map(moulds.map(({ id }) => [id, (usual * dice.whole(5, 18)) / 10])),
    lost: dice.whole(20, 120) / 1000,
    late: dice.whole(50, 250) / 1000,
    breaksEveryDays: breaks ? 60 : null,
    asked: (moulds.length * week.days * dice.pick(LOADS)) / 7,
  };
  const made = smallYard({
    yard: { ...yard, now: `${FIRST}T05:00:00+01:00`, horizonDays: 120, handoverDays: dice.pick(HANDOVERS)?.slice() },
    work: [{ rule: week.rule, from: '2027-01-02', start: '08:00', end: '12:00' }],
    mixes: [{ ...mixes[0]!, demouldMinutes: 600, cureHours: dice.pick([20, 44]), maxBags: 3 }],
    materials: [
      { ...materials[0]!, onHand: 15, pack: 10, leadDays: dice.whole(1, 5), supplier: 'Merchant' },
      materials[1]!,
    ],
    castings: [castings[0]!, { ...castings[0]!, id: CASTINGS[1], name: 'Panel 600', kg: 9 }],
    moulds,
    kits: CASTINGS.map((casting) => ({
      ...{ id: casting, name: casting, pieces: [{ casting, count: 1 }], parts: [], cuts: [], packMinutes: 2 },
    })),
    orders: [],
  });
  return { hidden, yard: made, record: recordOf(diceOf(50_000 + seed), hidden, made) };
};

/** What is asked for on a day, an order a line; none on most. */
export const askedOn = ({ seed, asked }: Hidden, date: string): { panel: string; count: number }[][] => {
  const dice = diceFor(seed, 'asked', date);
  const pieces = [1, 2, 2, 3, 4, 4, 6, 8];
  const average = pieces.reduce((sum, one) => sum + one, 0) / pieces.length;
  if (!dice.chance(asked / average)) return [];
  const first = dice.pick(CASTINGS);
  const count = dice.pick(pieces);
  const other = count > 2 && dice.chance(0.4) ? Math.floor(count / 2) : 0;
  const lines = [
    { panel: first, count: count - other },
    { panel: CASTINGS.find((one) => one !== first)!, count: other },
  ];
  return [lines.filter((line) => line.count > 0)];
};

/** The date so many days after the first. */
export const dayOf = (n: number): string => dateOfDay(dayNumber(FIRST) + n);
