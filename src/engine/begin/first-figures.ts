/**
 * What a yard starts with for everything it was not asked: cautious, common practice without a source unless one is named,
 * and each a guess until the maker has confirmed it. The bag's data sheet comes first.
 */
export const FIRST_FIGURES = {
  /** Sand mortar is 2100 to 2250 kg/m³ fresh and 2050 to 2200 hardened; between the two, with the mesh in it. */
  densityKgPerM3: 2150,
  mixMinutes: 10,
  /** Fast-setting mortar without retarder can be worked 10 to 20 minutes at 20 °C. */
  workingMinutes: 15,
  washMinutes: 5,
  /** Kept wet for about an hour after it hardens. */
  attendMinutes: 60,
  /** About half its strength when stripped; three days at 20 °C before it goes out. */
  cureHours: 72,
  referenceCelsius: 20,
  stripMinutes: 8,
  cleanMinutes: 6,
  /** A bag of fast-setting mortar that was opened, tied up and kept dry, still mixes well for some days: damp air sets it first. */
  openedDays: 5,
} as const;

/**
 * Minutes to set up a clean mould: mesh, sleeves, release oil. Longer moulds take longer. Common practice, no source.
 *
 * Example: `setUpMinutesGuess(900)` is 12.
 */
export const setUpMinutesGuess = (lengthMm: number): number => Math.round(7 + (5.5 * lengthMm) / 1000);

const unhurriedFillMinutes = (lengthMm: number): number => Math.round(2 + (5.2 * lengthMm) / 1000);

/**
 * Minutes to fill a mould, by its length: 7 for a 900. Where so many pieces would not be full before the mix stiffens
 * though one bag fills them, the maker is quicker than that, and every length is taken to be so. At least 1 minute, at
 * most the working time.
 *
 * Example: three 600s of one bag, worked for 15 minutes: `fillMinutesGuess(600, { pieces: 3, lengthMm: 600 }, 15)` is
 * 5. Six of them: `fillMinutesGuess(600, { pieces: 6, lengthMm: 600 }, 15)` is 2.
 */
export const fillMinutesGuess = (
  lengthMm: number,
  bag: { pieces: number; lengthMm: number },
  workingMinutes: number,
): number => {
  const ofBag = Math.max(1, Math.floor(bag.pieces)) * unhurriedFillMinutes(bag.lengthMm);
  const quicker = Math.min(1, workingMinutes / ofBag);
  const minutes = Math.floor(unhurriedFillMinutes(lengthMm) * quicker);
  return Math.max(1, Math.min(minutes, workingMinutes));
};

/**
 * Mass in kg of a slab from its size, at 2150 kg/m³ and to a tenth.
 *
 * Example: `panelKg(900, 200, 35)` is 13.5.
 */
export const panelKg = (lengthMm: number, heightMm: number, thicknessMm: number): number =>
  Math.max(0.1, Math.round((lengthMm * heightMm * thicknessMm * FIRST_FIGURES.densityKgPerM3) / 1e8) / 10);
