import type { Mould } from '../../../shared/mould.ts';

/** What work changes of a mould. */
export type MouldState = Pick<Mould, 'condition' | 'prepped' | 'setFor' | 'turnsSinceOil'>;

/** A mould that is poured or set up is dry: nothing is remembered of when its coat would be. */
const dried = ({ dryFrom }: Mould): { dryFrom?: null } => (dryFrom === undefined ? {} : { dryFrom: null });

/** Out of use now: nothing is set up or poured in it until it is mended. */
export const isOut = ({ condition }: Pick<Mould, 'condition'>): boolean =>
  condition === 'damaged' || condition === 'retired';

/** Damaged, but the day has come on which it was to be mended: by rule R5 it is ready from then on. `today` is a local date. */
export const isMendedByDay = (
  { condition, repairedOn }: Pick<Mould, 'condition' | 'repairedOn'>,
  today: string,
): boolean => condition === 'damaged' && repairedOn !== undefined && repairedOn <= today;

/** Taken out of the yard for good. */
export const isRetired = ({ condition }: Pick<Mould, 'condition'>): boolean => condition === 'retired';

/** Out of use with no day named on which it is mended (R5): no plan can count on it. */
export const isOutForGood = ({ condition, repairedOn }: Pick<Mould, 'condition' | 'repairedOn'>): boolean =>
  condition === 'retired' || (condition === 'damaged' && repairedOn === undefined);

/** Whether a mould is made for a casting, changed over or not. */
export const makesPiece = ({ makes }: Pick<Mould, 'makes'>, casting: string): boolean =>
  makes.some((make) => make.casting === casting);

/**
 * A sealing coat has to be given before the next pour (R6): as many turns as it lasts have been made since the last one.
 * `undefined` is a mould that never needs one.
 *
 * `isCoatDue(8, 8)` is true, `isCoatDue(7, 8)` and `isCoatDue(50, undefined)` are false.
 */
export const isCoatDue = (turnsSinceOil: number, oilEveryTurns: number | undefined): boolean =>
  oilEveryTurns !== undefined && turnsSinceOil >= oilEveryTurns;

/** Turns since the sealing coat once a pour is in the mould; the pour counts itself. `turnsAfterPour(8, true)` is 1. */
export const turnsAfterPour = (turnsSinceOil: number, coated: boolean): number => (coated ? 0 : turnsSinceOil) + 1;

/** What a set-up takes by the casting to be poured, minutes. */
export interface SetUpFigures {
  prepMinutes: number;
  cleanMinutes: number;
}

/**
 * Minutes of setting a mould up for a casting (R6): its own work, cleaning where the mould is dirty, changing over from
 * what it was set for (0 when it is set for this casting).
 *
 * `setUpMinutes({ prepMinutes: 5, cleanMinutes: 6 }, 12, true)` is 23: set up, cleaned and changed.
 */
export const setUpMinutes = (casting: SetUpFigures, changeMinutes: number, dirty: boolean): number =>
  casting.prepMinutes + (dirty ? casting.cleanMinutes : 0) + changeMinutes;

/**
 * Minutes of a sealing coat (R6): a dirty mould is cleaned first, as the casting it is set for asks. Its drying comes after.
 *
 * `coatMinutes(10, { cleanMinutes: 6 }, true)` is 16.
 */
export const coatMinutes = (oilMinutes: number, setFor: Pick<SetUpFigures, 'cleanMinutes'>, dirty: boolean): number =>
  oilMinutes + (dirty ? setFor.cleanMinutes : 0);

/**
 * A sealing coat that nobody wrote down was given before a set-up or a pour: one was due by then (R6 allows none without,
 * but of a mould that was set up already).
 */
export const wasCoated = (mould: Pick<Mould, 'turnsSinceOil' | 'oilEveryTurns' | 'prepped'>): boolean =>
  !mould.prepped && isCoatDue(mould.turnsSinceOil, mould.oilEveryTurns);

/** What is forgotten of a damage that is mended. */
export const MENDED = { repairedOn: null, damageNote: null } as const;

/** What becomes of a mould; null clears. */
type Changed = MouldState & { dryFrom?: string | null };

/** A clean bare mould with a new coat, which is dry from an instant on. */
export const afterCoat = (mould: Mould, dryFrom: string): Changed => ({
  ...{ condition: 'ready', prepped: false, setFor: mould.setFor, turnsSinceOil: 0 },
  dryFrom,
});

/** A mould that holds a new piece. One that is damaged stays so. `coated`: it got a coat that was not written down. */
export const afterPour = (mould: Mould, casting: string, coated: boolean): Changed => ({
  condition: isOut(mould) ? mould.condition : 'ready',
  prepped: false,
  setFor: casting,
  turnsSinceOil: turnsAfterPour(mould.turnsSinceOil, coated),
  ...dried(mould),
});

/** A mould whose piece is out: set for that piece (R6), and to be cleaned, unless it is out of use. */
export const afterStrip = (mould: Mould, casting: string): Pick<MouldState, 'condition' | 'prepped' | 'setFor'> => ({
  condition: isOut(mould) ? mould.condition : 'dirty',
  prepped: false,
  setFor: casting,
});

/** A mould with nothing left to do before a pour of this casting. `coated`: it got a coat that was not written down. */
export const afterSetUp = (mould: Mould, casting: string, coated: boolean): Changed => ({
  condition: 'ready',
  prepped: true,
  setFor: casting,
  turnsSinceOil: coated ? 0 : mould.turnsSinceOil,
  ...dried(mould),
});
