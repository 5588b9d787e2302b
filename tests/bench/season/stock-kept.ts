import type { StockEntry } from '../../../shared/stock-entry.ts';
import { dayNumber } from '../../../shared/time.ts';
import { calendar } from '../../contract/audit-plan.mjs';
import { standingLines } from '../../support/standing-lines.ts';

/** What of a material decides how long it keeps once it is opened. */
interface Keeping {
  id: string;
  openedDays?: number | null | undefined;
}

/** Where the stock book of a season shows that its plans counted on what was not there. */
export interface NotThere {
  /** Cuts of which the book has no stick, and no sheet. */
  cutsOfNone: number;
  /** Takings of bags that were past their date, on the bag or by how long it had been open. */
  pastDate: number;
}

/** Reads off the lines of a stock book what was cut of nothing, and what was used past its date. */
export const notThereBy = (book: readonly StockEntry[], materials: readonly Keeping[], timeZone: string): NotThere => {
  const { dateOf } = calendar(timeZone);
  const dayOf = (instant: string): number => dayNumber(dateOf(Date.parse(instant) / 60_000));
  const keeps = new Map(materials.map(({ id, openedDays }) => [id, openedDays ?? null]));
  const isPast = ({ material, at, useBy, openedAt }: StockEntry): boolean => {
    const openedDays = keeps.get(material) ?? null;
    const byOpening = openedAt === undefined || openedDays === null ? Infinity : dayOf(openedAt) + openedDays;
    return dayOf(at) > Math.min(useBy === undefined ? Infinity : dayNumber(useBy), byOpening);
  };
  const standing = standingLines(book);
  return {
    cutsOfNone: standing.filter(({ kind, beyond = 0 }) => kind === 'cut' && beyond > 0).length,
    pastDate: standing.filter((line) => line.kind === 'used' && line.quantity < 0 && isPast(line)).length,
  };
};
