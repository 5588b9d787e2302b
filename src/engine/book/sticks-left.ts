import { isCutUp, type Material } from '../../../shared/material.ts';
import type { PlanFile, PlanStick } from '../../../shared/plan.ts';
import { type Minute, minuteOf } from '../../../shared/time.ts';
import { calendarOf } from '../calendar/calendar.ts';
import { countedOnHand } from '../cut/offcuts.ts';
import type { Carrying } from './carrying.ts';
import type { Taken } from './goods.ts';
import { cutFromFor, sheetsCut } from './sheets-cut.ts';
import { restOfStick, sticksCut, sticksFor } from './sticks-cut.ts';
import { amountsTaken } from './stock-taken.ts';

type Sticks = Pick<PlanFile, 'batches' | 'orders'> & { sticks: readonly PlanStick[] };

/** When what is cut is needed, by batch or order. */
const neededAt = ({ batches, orders }: Pick<Sticks, 'batches' | 'orders'>): ReadonlyMap<string, Minute> =>
  new Map([
    ...batches.map(({ id, start }): [string, Minute] => [id, minuteOf(start)]),
    ...orders.map(({ id, packStart, completesAt }): [string, Minute] => [id, minuteOf(packStart ?? completesAt)]),
  ]);

/**
 * The sticks of a plan once the cuts for one batch or order are made: what is left of one that others are cut from is an
 * offcut then, opened when the first of them is needed.
 *
 * Example: of a stick of 3000 with a kerf of 2 four of 190 were cut for B1, four more are for B2: an offcut of 2232.
 */
export const sticksLeft = (
  { sticks, ...needing }: Sticks,
  cutFor: string,
  materials: readonly Material[],
  instantText: (at: Minute) => string,
): PlanStick[] => {
  const needed = neededAt(needing);
  return sticks.flatMap((stick) => {
    const [cut] = sticksFor([stick], cutFor);
    const material = materials.find(({ id }) => id === stick.material);
    if (!cut || !material) return [stick];
    const cuts = stick.cuts.filter((one) => one.for !== cutFor);
    if (cuts.length === 0) return [];
    const first = Math.min(...cuts.map((one) => needed.get(one.for) ?? minuteOf(stick.openedAt)));
    return [{ material: material.id, openedAt: instantText(first), offcutMm: restOfStick(cut, material), cuts }];
  });
};

const TOLERANCE = 1e-6;

/** Whether the book has come down by whole sticks and sheets just as a plan takes them: a share of one that is taken breaks another. */
const isCountedWhole = ({ before, after }: Carrying, taken: Taken, cutFor: string, plan: PlanFile): boolean => {
  const amounts = amountsTaken(before, taken, cutFromFor(plan, cutFor));
  return before.materials.every((material, place) => {
    if (!isCutUp(material)) return true;
    const gone = countedOnHand(material) - countedOnHand(after.materials[place]!);
    const own = amounts.reduce((sum, one) => (one.material === material.id ? sum + one.quantity : sum), 0);
    return Math.abs(gone - own) < TOLERANCE;
  });
};

/** What is still to be cut from sheets once all for a batch is cut; left out where nothing is. */
const sheetsLeft = ({ sheets = [] }: PlanFile, cutFor: string): Pick<PlanFile, 'sheets'> => {
  const left = sheets.filter((sheet) => sheet.for !== cutFor);
  return left.length > 0 ? { sheets: left } : {};
};

/**
 * A plan in which the cuts for one batch or order are made, as it has them; null where they were made from other sticks or
 * sheets, so that the rests are not those it goes on with.
 */
export const withoutCutsFor = (plan: PlanFile, cutFor: string, taken: Taken, carrying: Carrying): PlanFile | null => {
  const { before, after } = carrying;
  const named = cutFromFor(plan, cutFor);
  const areNamed =
    sticksCut(before.materials, taken.cuts, named).asNamed && sheetsCut(before, taken.sheets ?? [], named).asNamed;
  if (!areNamed || !isCountedWhole(carrying, taken, cutFor, plan)) return null;
  const { instantText } = calendarOf(after.yard.timeZone);
  const { sheets: _sheets, ...others } = plan;
  const sticks = sticksLeft(plan, cutFor, before.materials, instantText);
  return { ...others, sticks, ...sheetsLeft(plan, cutFor) };
};
