/**
 * Strength against age for Portland-type cements, from the codes. For planning only: none of these curves releases or
 * certifies a piece, none excuses a failed test, and none holds for calcium sulfoaluminate mortar (use the strength at
 * age the bag's data sheet gives). Ages are in days at 20 °C, ratios are shares of the 28 day strength.
 */

/** Exponent s by strength class of cement: R is 42.5R, 52.5N, 52.5R; N is 32.5R, 42.5N; S is 32.5N. EN 1992-1-1:2004, 3.1.2(6). */
export const EN_1992_S = { R: 0.2, N: 0.25, S: 0.38 } as const;

/**
 * Mean strength at an age as a share of that at 28 days: exp(s (1 - sqrt(28 / t))). EN 1992-1-1:2004, 3.1.2(6), eq 3.2.
 * 0 at age 0. Up to 3 days the clause wants test results.
 * Example: `en1992Ratio(7, EN_1992_S.N)` is 0.7788.
 */
export const en1992Ratio = (ageDays: number, s: number): number =>
  ageDays <= 0 ? 0 : Math.exp(s * (1 - Math.sqrt(28 / ageDays)));

/**
 * Age in days at which a share of the 28 day mean strength is reached, the inverse of `en1992Ratio`:
 * 28 / (1 - ln(r) / s)². Null for a share the curve never reaches (e^s and more) or that is not above 0.
 * Example: `en1992AgeDays(0.7, EN_1992_S.N)` is 4.755 days.
 */
export const en1992AgeDays = (ratio: number, s: number): number | null => {
  if (ratio <= 0) return null;
  const root = 1 - Math.log(ratio) / s;
  return root <= 0 ? null : 28 / root ** 2;
};

/**
 * Mean strength at 28 days in MPa of a class `fck`: fck + 8. EN 1992-1-1:2004, table 3.1.
 *
 * Example: `en1992MeanMpa(30)` is 38.
 */
export const en1992MeanMpa = (fckMpa: number): number => fckMpa + 8;

/**
 * Characteristic strength at an age, in MPa: fcm(t) - 8 between 3 and 28 days, fck from then on. EN 1992-1-1:2004,
 * 3.1.2(5). Null up to 3 days, where the clause wants test results.
 * Example: `en1992CharacteristicMpa(30, 7, EN_1992_S.N)` is 21.59 MPa.
 */
export const en1992CharacteristicMpa = (fckMpa: number, ageDays: number, s: number): number | null => {
  if (ageDays <= 3) return null;
  return ageDays >= 28 ? fckMpa : en1992Ratio(ageDays, s) * en1992MeanMpa(fckMpa) - 8;
};

/**
 * Mean strength in MPa of a heat-cured member at an age before 28 days, from its mean strength at release: fcmp + (fcm
 * - fcmp) log10(t - tp + 1) / log10(28 - tp + 1). EN 1992-1-1:2004, 10.3.1.1(3), eq 10.1. Null before release, and
 * after 28 days.
 *
 * Example: released after 1 day at 25 MPa, 48 MPa at 28 days: `heatCuredMeanMpa(3, { ageDays: 1, meanMpa: 25 }, 48)`
 * is 32.58.
 */
export const heatCuredMeanMpa = (
  ageDays: number,
  release: { ageDays: number; meanMpa: number },
  mean28Mpa: number,
): number | null => {
  if (ageDays < release.ageDays || ageDays > 28) return null;
  const gained = Math.log10(ageDays - release.ageDays + 1) / Math.log10(28 - release.ageDays + 1);
  return release.meanMpa + (mean28Mpa - release.meanMpa) * gained;
};

/** How fast a mix gains strength, by the share of its 28 day strength it has at 2 days. EN 13670:2009, 8.5. */
export type DevelopmentSpeed = 'rapid' | 'medium' | 'slow' | 'very slow';

/**
 * Speed class of a mix from its 2 day ratio: rapid from 0.50, medium from 0.30, slow from 0.15. EN 13670:2009, Annex F.
 * Example: `developmentSpeed(0.353)` is "medium".
 */
export const developmentSpeed = (ratioAtTwoDays: number): DevelopmentSpeed => {
  if (ratioAtTwoDays >= 0.5) return 'rapid';
  if (ratioAtTwoDays >= 0.3) return 'medium';
  return ratioAtTwoDays >= 0.15 ? 'slow' : 'very slow';
};

/** Constants a (days) and b of f(t) = f28 t / (a + b t). ACI 209R-92, table 2.2.1. */
export const ACI_209 = {
  typeOneMoist: { a: 4, b: 0.85 },
  typeThreeMoist: { a: 2.3, b: 0.92 },
  typeOneSteam: { a: 1, b: 0.95 },
  typeThreeSteam: { a: 0.7, b: 0.98 },
} as const;

interface AciConstants {
  a: number;
  b: number;
}

/**
 * Strength at an age as a share of that at 28 days: t / (a + b t). ACI 209R-92, 2.2.1, eq 2-1. At 28 days it is 0.995 to
 * 1.014, not 1: the constants are rounded.
 * Example: `aci209Ratio(7, ACI_209.typeOneMoist)` is 0.7035.
 */
export const aci209Ratio = (ageDays: number, { a, b }: AciConstants): number =>
  ageDays <= 0 ? 0 : ageDays / (a + b * ageDays);

/**
 * Age in days at which a share of the 28 day strength is reached, the inverse of `aci209Ratio`: r a / (1 - r b). Null
 * for a share the curve never reaches (1 / b and more) or that is not above 0.
 * Example: `aci209AgeDays(0.7, ACI_209.typeOneMoist)` is 6.914 days.
 */
export const aci209AgeDays = (ratio: number, { a, b }: AciConstants): number | null =>
  ratio <= 0 || ratio * b >= 1 ? null : (ratio * a) / (1 - ratio * b);
