import type { UnitSystem } from '../../../shared/units.ts';
import { numberOfCell } from '../../engine/csv/cells.ts';
import type { Dialect } from '../../engine/csv/dialect.ts';
import { measuredBy, readAmount, shownUnit } from '../../engine/units/material-unit.ts';
import { exact } from '../../engine/units/measure.ts';
import { type Reading, read, unread } from '../../engine/units/reading.ts';
import type { RowReader } from './csv-row.ts';

/** What a number of a row counts: so many of it make one of the unit that the material is kept in. */
export interface RowUnit {
  perUnit: number;
  system: UnitSystem;
}

const isSame = (one: string, other: string): boolean => one.toLowerCase() === other.trim().toLowerCase();

/** A spreadsheet gets as many figures as are sure to mean something; a whole amount stays whole. */
const FIGURES = 8;
/** In the unit it is kept in only what sums of fractions left behind is dropped: 6.576, not 6.5760000000000005. */
const OWN_FIGURES = 12;
export const inRowUnit = (stored: number, { perUnit }: RowUnit): number =>
  Number((stored * perUnit).toPrecision(perUnit === 1 ? OWN_FIGURES : FIGURES));

/** A number as it was written for what is there means exactly that, however it was rounded. */
export const asIs = (number: number, now: number | null, unit: RowUnit): number =>
  now !== null && inRowUnit(now, unit) === number ? now : exact(number / unit.perUnit);

/** A number counts the unit of the row; beside it a measure may be named: "2 lb". */
export const amountOf = (
  text: string,
  was: { stored: string; now: number },
  unit: RowUnit,
  dialect: Dialect,
): Reading<number> => {
  const bare = numberOfCell(text, dialect);
  if (bare.ok) return read(asIs(bare.value, was.now, unit));
  return /^[-\d.,\s]+$/.test(text) ? bare : readAmount(text, was.stored, unit.system);
};

/**
 * The unit that a row names: the material's own, as older files have it, the one that the yard shows, or another one that
 * measures the same. Without a name it is the one that is shown.
 */
export const rowUnitOf = (row: RowReader, was: { name: string; unit: string }, system: UnitSystem): RowUnit => {
  const named = row.text('unit');
  const shown = shownUnit(was.unit, system);
  if (named === '' || isSame(named, shown.word)) return { perUnit: shown.perUnit, system };
  if (isSame(named, was.unit)) return { perUnit: 1, system };
  const one = measuredBy(named) ? readAmount(`1 ${named}`, was.unit, system) : unread('');
  if (!one.ok) row.wrong('unit', `${was.name} is counted in ${shown.word}. Write its amounts so`);
  return { perUnit: one.ok ? exact(1 / one.value) : 1, system };
};

/** Of one of the row's unit. */
export const priceOf = (price: number | null, now: number | null, { perUnit, system }: RowUnit): number | null =>
  price === null ? null : asIs(price, now, { perUnit: 1 / perUnit, system });
