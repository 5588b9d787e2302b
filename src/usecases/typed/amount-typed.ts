import { LARGEST } from '../../../shared/number.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import { readAmount, shownUnit, tooFine } from '../../engine/units/material-unit.ts';
import { type Reading, unread } from '../../engine/units/reading.ts';
import type { FormFields } from './form-fields.ts';

/** What stands in a field for an amount and, where the page had filled it in, exactly how much that was. */
export interface AmountTyped {
  text: string;
  /** In the unit the material is kept in. */
  was?: string | undefined;
}

/** A field for an amount as it was sent, with what the page had filled it in from. */
export const amountIn = (fields: FormFields, name: string): AmountTyped => ({
  text: fields[name] ?? '',
  was: fields[`${name}Was`],
});

const DECIMALS = 2;

/** How an amount stands in its field: a number in the unit that is shown. */
export const amountField = (quantity: number, unit: string, system: UnitSystem): string =>
  String(Number((quantity * shownUnit(unit, system).perUnit).toFixed(DECIMALS)));

const exactly = ({ text, was }: AmountTyped, unit: string, system: UnitSystem): number | null => {
  const exact = was === undefined || was === '' ? Number.NaN : Number(was);
  return Number.isFinite(exact) && amountField(exact, unit, system) === text ? exact : null;
};

/** Said where an amount is more than a yard file may hold. */
export const TOO_MUCH = `Is more than ${LARGEST.toLocaleString('en')}.`;

/** An amount of a material as it is counted, bought or kept: no finer than that is done, and no more than a yard file may hold. */
export const stockAmount = (text: string, unit: string, system: UnitSystem): Reading<number> => {
  const amount = readAmount(text, unit, system);
  const fine = amount.ok ? tooFine(text, unit) : null;
  if (fine !== null) return unread(fine);
  return amount.ok && amount.value > LARGEST ? unread(TOO_MUCH) : amount;
};

/**
 * How much is meant, in the unit the material is kept in; null when nothing was typed. A field left as the page filled it
 * in stands for exactly what it was filled in from, however it was rounded to be shown.
 */
export const amountTyped = (
  typed: AmountTyped,
  unit: string,
  system: UnitSystem,
): { ok: true; value: number | null } | { ok: false; reason: string } => {
  if (typed.text === '') return { ok: true, value: null };
  const exact = exactly(typed, unit, system);
  return exact === null ? stockAmount(typed.text, unit, system) : { ok: true as const, value: exact };
};

/** A text that names its unit ("700 g"), kept to be shown again; a bare number is shown like any other. */
export const worthKeeping = (text: string): string | null => (/[^\d\s.,/½¼¾-]/.test(text) ? text.trim() : null);

/** What was typed once, for as long as it comes to what is kept now; else null. */
export const asTyped = (
  text: string | undefined,
  quantity: number,
  unit: string,
  system: UnitSystem,
): string | null => {
  if (text === undefined) return null;
  const read = readAmount(text, unit, system);
  return read.ok && Math.abs(read.value - quantity) < 1e-9 * Math.max(1, quantity) ? text : null;
};
