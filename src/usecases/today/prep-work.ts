import type { PlanFile, PlanPour } from '../../../shared/plan.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { coatBefore } from '../../engine/book/coat-before.ts';
import { poursBefore } from '../plan/pours-of-mould.ts';

/** What there is to do to a mould before a pour of the plan. */
export interface PrepWork {
  clean: boolean;
  /** What it is set for until then, where that is another piece. */
  changeFrom: string | null;
  /** Its sealing coat comes before it, and is not written down yet. */
  sealed: boolean;
}

/**
 * What setting a mould up for a pour takes: it is dirty after every strip, unless it was coated since, and set for what it
 * made last. A prepped mould asks for nothing the first time.
 */
export const prepWork = (pour: PlanPour, plan: PlanFile, yard: YardFile): PrepWork => {
  const mould = yard.moulds.find(({ id }) => id === pour.mould);
  const before = poursBefore(plan, pour);
  const piece = yard.inMould.find((one) => one.mould === pour.mould);
  const last = before.at(-1)?.casting ?? piece?.casting ?? mould?.setFor ?? pour.casting;
  const sealed = coatBefore(plan.coats, [...before, pour], pour) !== undefined;
  return {
    clean: !sealed && (before.length > 0 || piece !== undefined || mould?.condition === 'dirty'),
    changeFrom: last === pour.casting ? null : last,
    sealed,
  };
};
