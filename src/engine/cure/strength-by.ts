import type { Minute } from '../../../shared/time.ts';
import type { Calendar } from '../calendar/calendar.ts';
import type { Climate } from './climate.ts';
import { adjustedAgeDays, type TemperatureSpan } from './maturity.ts';
import { ACI_209, aci209AgeDays, aci209Ratio, EN_1992_S, en1992AgeDays, en1992Ratio } from './strength.ts';

/** Cements that a published curve is for: strength classes R, N, S of EN 1992-1-1, and ASTM types I and III kept moist. */
export const CEMENTS = ['R', 'N', 'S', 'I', 'III'] as const;
/** One of `CEMENTS`. For rapid (calcium sulfoaluminate) mortar there is none: no published curve fits it. */
export type Cement = (typeof CEMENTS)[number];

interface Curve {
  share: (ageDays: number) => number;
  age: (share: number) => number | null;
}

const enCurve = (s: number): Curve => ({
  share: (age) => en1992Ratio(age, s),
  age: (share) => en1992AgeDays(share, s),
});
const aciCurve = (constants: (typeof ACI_209)[keyof typeof ACI_209]): Curve => ({
  share: (age) => aci209Ratio(age, constants),
  age: (share) => aci209AgeDays(share, constants),
});

const CURVES: Readonly<Record<Cement, Curve>> = {
  R: enCurve(EN_1992_S.R),
  N: enCurve(EN_1992_S.N),
  S: enCurve(EN_1992_S.S),
  I: aciCurve(ACI_209.typeOneMoist),
  III: aciCurve(ACI_209.typeThreeMoist),
};

/** Up to this age, in days at 20 °C, EN 1992-1-1:2004, 3.1.2(5) wants test results; the other curves are held to it too. */
const YOUNGEST_DAYS = 3;
/** Where a yard expects no temperature. */
const USUAL_CELSIUS = 20;
/** A share that is not reached within so many days is not waited for. */
const MOST_DAYS = 180;
const DAY_MINUTES = 1440;

/** Where a piece is kept: the temperatures expected there. */
export interface CuringPlace {
  climate: Climate;
  calendar: Calendar;
}

/** Until when the temperature of a minute holds, and no longer than its day. */
const holdsUntil = ({ climate, calendar }: CuringPlace, at: Minute): Minute =>
  Math.min(climate.nextStep(at), calendar.midnightOf(calendar.dayOf(at) + 1));

const spansOf = (place: CuringPlace, from: Minute, to: Minute): TemperatureSpan[] => {
  const spans: TemperatureSpan[] = [];
  for (let at = from; at < to; ) {
    const end = Math.min(to, holdsUntil(place, at));
    spans.push({ hours: (end - at) / 60, celsius: place.climate.celsiusAt(at) ?? USUAL_CELSIUS });
    at = end;
  }
  return spans;
};

/** How strong a piece is by a curve: a share of its 28 day strength, or why no curve says. */
export type StrengthBy = { share: number } | { unknown: 'young' | 'frost' };

/**
 * Share of its 28 day strength that a piece of a Portland-type cement has at a minute, 1 at the most: the curve of its
 * cement (EN 1992-1-1:2004, eq 3.2, or ACI 209R-92, eq 2-1), at its age adjusted for the expected temperatures (EN
 * 1992-1-1:2004, eq B.10; 20 °C where none are expected). "young" up to three days at 20 °C, where the code wants tests;
 * "frost" where it is kept under 0 °C, for which the adjustment does not hold. For planning only: no piece is released by
 * it, and no rapid (calcium sulfoaluminate) mortar follows it.
 *
 * Example: class N, seven days at 20 °C, which count 6.98: a share of 0.778.
 */
export const strengthBy = (cement: Cement, place: CuringPlace, filledAt: Minute, at: Minute): StrengthBy => {
  const age = adjustedAgeDays(spansOf(place, filledAt, at));
  if (age === null) return { unknown: 'frost' };
  if (age <= YOUNGEST_DAYS) return { unknown: 'young' };
  return { share: Math.min(1, CURVES[cement].share(age)) };
};

/**
 * First minute at which a piece has a share of its 28 day strength by the same curve; null where it is kept under 0 °C
 * before that, where the curve never comes to it, or not within half a year. Never before three days at 20 °C.
 *
 * Example: 0.7 of class N at 10 °C, where a day counts 0.616: 4.755 / 0.616 = 7.72 days.
 */
export const strongEnoughFrom = (
  cement: Cement,
  place: CuringPlace,
  filledAt: Minute,
  share: number,
): Minute | null => {
  const age = CURVES[cement].age(share);
  if (age === null) return null;
  let left = Math.max(age, YOUNGEST_DAYS);
  for (let at = filledAt; at < filledAt + MOST_DAYS * DAY_MINUTES; ) {
    const end = holdsUntil(place, at);
    const gained = adjustedAgeDays(spansOf(place, at, end));
    if (gained === null) return null;
    if (gained >= left) return at + Math.ceil(((end - at) * left) / gained);
    left -= gained;
    at = end;
  }
  return null;
};
