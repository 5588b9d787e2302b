/**
 * Maturity of Portland-type mixes from a record of temperatures. For planning only: ASTM C1074 wants the line of strength
 * against maturity from the same mix, no piece is released on maturity alone, and no constant here holds for calcium
 * sulfoaluminate mortar. The plan itself ages mixes by `ageRate` of age.ts.
 */

/** A stretch of time at one temperature. */
export interface TemperatureSpan {
  hours: number;
  celsius: number;
}

/**
 * Nurse-Saul maturity in °C hours: the sum of (T - T0) dt, where stretches colder than the datum T0 count nothing.
 * ASTM C1074, eq 1. T0 is 0 °C for Type I cement without admixture cured at 0 to 40 °C; -10 °C is the older habit.
 *
 * Example: `nurseSaulDegreeHours([{ hours: 12, celsius: 20 }, { hours: 12, celsius: 10 }], 0)` is 360.
 */
export const nurseSaulDegreeHours = (spans: TemperatureSpan[], datumCelsius: number): number =>
  spans.reduce((sum, span) => sum + Math.max(0, span.celsius - datumCelsius) * span.hours, 0);

/**
 * Hours at one temperature until a Nurse-Saul maturity is reached; null at or below the datum, where it never is.
 *
 * Example: 3500 °C h at 23 °C with T0 0 °C: `nurseSaulHours(3500, 23, 0)` is 152.17.
 */
export const nurseSaulHours = (degreeHours: number, celsius: number, datumCelsius: number): number | null =>
  celsius <= datumCelsius ? null : degreeHours / (celsius - datumCelsius);

/**
 * How many days one day at a temperature counts for: exp(13.65 - 4000 / (273 + T)). CEB-FIP MC90, eq 2.1-87; the same as
 * fib MC2010, eq 5.1-85, and EN 1992-1-1:2004, Annex B, eq B.10 (it is not in EN 13670). The constants are rounded, so
 * that 20 °C counts 0.998. Null outside 0 to 80 °C, where the expression does not hold.
 * Example: `adjustedAgeRate(10)` is 0.6161.
 */
export const adjustedAgeRate = (celsius: number): number | null =>
  celsius < 0 || celsius > 80 ? null : Math.exp(13.65 - 4000 / (273 + celsius));

/**
 * Temperature-adjusted age in days by the same equation, the age to put into `en1992Ratio` when a piece was not at 20
 * °C. Null when a stretch lies outside 0 to 80 °C.
 *
 * Example: `adjustedAgeDays([{ hours: 12, celsius: 30 }, { hours: 12, celsius: 10 }, { hours: 24, celsius: 5 }])` is
 * 1.5690.
 */
export const adjustedAgeDays = (spans: TemperatureSpan[]): number | null => {
  let days = 0;
  for (const span of spans) {
    const rate = adjustedAgeRate(span.celsius);
    if (rate === null) return null;
    days += (rate * span.hours) / 24;
  }
  return days;
};

const GAS_CONSTANT = 8.314;

/**
 * Q in kelvin of ASTM C1074, eq 2, from an apparent activation energy in kJ/mol: E / R.
 *
 * Example: `activationKelvinOf(34)` is 4089.5 (a Portland mortar, Barnett et al 2006).
 */
export const activationKelvinOf = (activationKjPerMol: number): number => (activationKjPerMol * 1000) / GAS_CONSTANT;
