/** How a piece is best moved: by anyone, by one strong person, by two, or not by hand alone. */
export type Lifting = 'one' | 'one with care' | 'two' | 'more';

/**
 * The lifting filters of HSE INDG143 rev 4 (2020), between elbow and knuckle height, close to the body: 16 kg and 25 kg (25
 * kg seen in print, 16 kg from memory). Two people lift two thirds of the sum of what each may (HSE L23, from memory).
 */
const FILTERS_KG = { lower: 16, upper: 25, two: (25 + 25) * (2 / 3) };

/**
 * Which filter a mass in kg passes. These filters say when to look closer; they are no legal limits, and local rules
 * come first. A good grip, upright, both hands, at most 30 lifts an hour; reaching, bending, twisting and carrying all
 * lower them.
 *
 * Example: `liftingOf(13.5)` is "one", `liftingOf(18)` is "one with care", `liftingOf(30)` is "two", `liftingOf(63)`
 * is "more".
 */
export const liftingOf = (kg: number): Lifting => {
  if (kg <= FILTERS_KG.lower) return 'one';
  if (kg <= FILTERS_KG.upper) return 'one with care';
  return kg <= FILTERS_KG.two ? 'two' : 'more';
};
