import type { Casting } from '../../../shared/casting.ts';
import type { FigureOf } from '../../../shared/figure.ts';
import type { Mix } from '../../../shared/mix.ts';
import type { Mould } from '../../../shared/mould.ts';
import type { TemperatureStep } from '../../../shared/temperature.ts';
import { dateOfDay, minuteOf, type Weekday } from '../../../shared/time.ts';
import { TASK_KINDS, type WorkWindow } from '../../../shared/work.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { calendarOf } from '../calendar/calendar.ts';
import { stepsOfMonths } from '../cure/month-temperatures.ts';
import { emptyYard, type YardBegun } from './empty-yard.ts';
import { FIRST_FIGURES, fillMinutesGuess, panelKg, setUpMinutesGuess } from './first-figures.ts';
import { type MixRate, mixRate, type StripTime } from './mix-rate.ts';
import { monthsLike } from './seasons.ts';
import { sessionsInHandFor } from './sessions-in-hand.ts';

/** Minutes the maker may say; what is not said is a guess. Setting up, filling and so on are for one mould. */
export type MinutesSaid = Partial<Record<'setUp' | 'fill' | 'clean' | 'strip' | 'mix' | 'working', number>>;

/** The four answers a yard begins with, in SI units. */
export interface BeginAnswers extends YardBegun {
  /** Each length once, with how many moulds make it and what it is called: "900". */
  panels: { called: string; lengthMm: number; moulds: number }[];
  heightMm: number;
  thicknessMm: number;
  /** So many pieces of one of the lengths; halves are allowed. */
  bag: { pieces: number; lengthMm: number };
  cold: StripTime;
  warm: StripTime;
  /** What the days are like now. */
  nowCelsius: number;
  /** `start` and `end` are "HH:MM". */
  hours: { days: Weekday[]; start: string; end: string; people: number }[];
  minutes: MinutesSaid;
}

interface YardFromAnswers {
  ok: true;
  yard: YardFile;
  /** Every figure that nobody said. */
  guesses: FigureOf[];
}

const BEGUN = { mix: 'panel-mix', bag: 'bag' } as const;

/**
 * The name of a length's casting in the records: one for every length, to any fraction of a mm.
 *
 * Example: `castingIdOf(1371.6)` is "panel-1371.6".
 */
export const castingIdOf = (lengthMm: number): string => `panel-${Number(lengthMm.toFixed(3))}`;

const workOf = ({ hours, timeZone, now }: BeginAnswers): WorkWindow[] => {
  const from = dateOfDay(calendarOf(timeZone).dayOf(minuteOf(now)));
  return hours.map(({ days, start, end, people }) => ({
    ...{ rule: `FREQ=WEEKLY;BYDAY=${days.join(',')}`, from, start, end, crew: people, allows: [...TASK_KINDS] },
  }));
};

const castingsOf = ({ panels, heightMm, thicknessMm, bag, minutes }: BeginAnswers, working: number): Casting[] =>
  panels.map(({ called, lengthMm }) => ({
    ...{ id: castingIdOf(lengthMm), name: `Panel ${called}`, mix: BEGUN.mix },
    kg: panelKg(lengthMm, heightMm, thicknessMm),
    fillMinutes: minutes.fill ?? fillMinutesGuess(lengthMm, bag, working),
    prepMinutes: minutes.setUp ?? setUpMinutesGuess(lengthMm),
    cleanMinutes: minutes.clean ?? FIRST_FIGURES.cleanMinutes,
    stripMinutes: minutes.strip ?? FIRST_FIGURES.stripMinutes,
    ...{ stripCrew: 1, rackSpaces: 1, perPiece: [], cuts: [] },
  }));

const mixOf = (
  { bag, minutes, heightMm, thicknessMm }: BeginAnswers,
  kgs: number[],
  rate: MixRate & { ok: true },
): Mix => {
  const yieldKgPerBag = Number((bag.pieces * panelKg(bag.lengthMm, heightMm, thicknessMm)).toFixed(3));
  const { washMinutes, attendMinutes, cureHours, referenceCelsius } = FIRST_FIGURES;
  return {
    ...{ id: BEGUN.mix, name: 'Panel mix', yieldKgPerBag, bagStep: 1, crew: 1 },
    // One bag at a time, unless a piece takes more than one.
    maxBags: Math.max(1, Math.ceil(Math.max(...kgs) / yieldKgPerBag - 1e-9)),
    mixMinutes: minutes.mix ?? FIRST_FIGURES.mixMinutes,
    workingMinutes: minutes.working ?? FIRST_FIGURES.workingMinutes,
    ...{ washMinutes, attendMinutes, cureHours, referenceCelsius, protectHours: 0 },
    ...{ demouldMinutes: rate.demouldMinutes, activationKelvin: rate.activationKelvin },
    perBag: [{ material: BEGUN.bag, quantity: 1 }],
  };
};

const mouldsOf = ({ panels }: BeginAnswers): Mould[] =>
  panels.flatMap(({ called, lengthMm, moulds }) =>
    Array.from({ length: moulds }, (_, index) => ({
      ...{ id: `${called} no. ${index + 1}`, setFor: castingIdOf(lengthMm), condition: 'ready' as const },
      makes: [{ casting: castingIdOf(lengthMm), changeMinutes: 0 }],
      ...{ prepped: false, turnsSinceOil: 0, oilMinutes: 0, oilDryMinutes: 0 },
    })),
  );

/** Bags can be had on the day: what is not known of the stock and the merchant holds no date up. */
const BAGS = {
  ...{ id: BEGUN.bag, name: 'Mortar', unit: 'bag', onHand: 0, pack: 1, leadDays: 0, minimum: 0, kerfMm: 0 },
};

/** The present month is as it was said, the others as far off it as they are at the zone's own place: no winter counts as this summer. */
const temperaturesOf = ({ timeZone, now, nowCelsius }: BeginAnswers, horizonDays: number): TemperatureStep[] => {
  const date = dateOfDay(calendarOf(timeZone).dayOf(minuteOf(now)));
  const month = Number(date.slice(5, 7)) - 1;
  return stepsOfMonths(monthsLike({ month, celsius: nowCelsius }, timeZone), date, horizonDays);
};

const guessesOf = ({ minutes, panels }: BeginAnswers): FigureOf[] => {
  const unsaid = (figures: Record<string, keyof MinutesSaid | null>): string[] =>
    Object.entries(figures).flatMap(([figure, said]) => (said !== null && minutes[said] !== undefined ? [] : [figure]));
  const mix = unsaid({
    ...{ yieldKgPerBag: null, demouldMinutes: null, mixMinutes: 'mix', workingMinutes: 'working' },
    ...{ washMinutes: null, attendMinutes: null, cureHours: null },
  });
  const casting = unsaid({
    ...{ kg: null, prepMinutes: 'setUp', fillMinutes: 'fill', stripMinutes: 'strip', cleanMinutes: 'clean' },
  });
  return [
    ...mix.map((figure) => ({ kind: 'mix' as const, id: BEGUN.mix, figure })),
    ...['onHand', 'leadDays'].map((figure) => ({ kind: 'material' as const, id: BEGUN.bag, figure })),
    ...panels.flatMap(({ lengthMm }) =>
      casting.map((figure) => ({ kind: 'casting' as const, id: castingIdOf(lengthMm), figure })),
    ),
    { kind: 'yard', id: 'yard', figure: 'temperatures' },
  ];
};

/**
 * A yard from the four answers: which lengths in how many moulds, what one bag fills, when it can be stripped on a cold and
 * on a warm day, and when there is work. Masses follow from the size, what a bag places from the pieces it fills, the mix's
 * rate from the two days (`mixRate`), everything else from `FIRST_FIGURES`; what nobody said comes back as a guess, and by
 * how much that is, so many sessions are kept in hand. The
 * answers have to be in range (lengths and pieces over 0, at least one panel, fill no longer than working time); what
 * `mixRate` refuses is refused.
 *
 * Example: 900s and two of them to a bag, 200 high and 35 thick: panels of 13.5 kg, and a bag places 27 kg.
 */
export const yardFromAnswers = (answers: BeginAnswers): YardFromAnswers | (MixRate & { ok: false }) => {
  const rate = mixRate(answers.cold, answers.warm, FIRST_FIGURES.referenceCelsius);
  if (!rate.ok) return rate;
  const castings = castingsOf(answers, answers.minutes.working ?? FIRST_FIGURES.workingMinutes);
  const work = workOf(answers);
  const guesses = guessesOf(answers);
  const empty = emptyYard(answers);
  const yard: YardFile = {
    ...empty,
    yard: { ...empty.yard, sessionsInHand: sessionsInHandFor(guesses) },
    ...{ work, castings, moulds: mouldsOf(answers), materials: [BAGS] },
    temperatures: temperaturesOf(answers, empty.yard.horizonDays),
    mixes: [
      mixOf(
        answers,
        castings.map(({ kg }) => kg),
        rate,
      ),
    ],
  };
  return { ok: true, yard, guesses };
};
