import { dayWords } from '../../../shared/day-words.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { shownUnit } from '../../engine/units/material-unit.ts';
import { amountField } from '../typed/amount-typed.ts';

/**
 * Why something can't be made, in the yard's units. The plan file says it in the unit that the material is kept in; only
 * that amount is put otherwise: "Citric acid cannot be had: 57 more g are needed" says "2.01 more oz" in a US yard. So is a
 * day at its end: "before 2027-05-08" says "before Sat 8 May 2027".
 */
export const reasonShown = (
  reason: string | null,
  materials: readonly Pick<YardFile['materials'][number], 'name' | 'unit'>[],
  system: UnitSystem,
): string | null => {
  if (reason === null) return null;
  const day = /\d{4}-\d{2}-\d{2}$/.exec(reason);
  if (day) return `${reason.slice(0, day.index)}${dayWords(day[0])} ${day[0].slice(0, 4)}`;
  for (const { name, unit } of materials) {
    const { word, perUnit } = shownUnit(unit, system);
    const [start, end] = [`${name} cannot be had: `, ` more ${unit} `];
    const at = reason.indexOf(end);
    if (perUnit === 1 || !reason.startsWith(start) || at < 0) continue;
    const quantity = Number(reason.slice(start.length, at));
    if (Number.isFinite(quantity)) return `${start}${amountField(quantity, unit, system)} more ${word} are needed`;
  }
  return reason;
};
