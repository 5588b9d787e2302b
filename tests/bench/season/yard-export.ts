import { readYardFile, type YardFile } from '../../../shared/yard-file.ts';
import { planYard } from '../../../src/engine/plan.ts';
import type { Standing } from './standing.ts';
import type { Visitor } from './visitor.ts';

/** The yard as the program exports it. A file it cannot read itself is a fault of the program. */
export const exportedYard = async (visitor: Visitor): Promise<YardFile> => {
  const read = readYardFile(JSON.parse(await visitor.page('/yard/files/yard.json')));
  if (read.ok) return read.yard;
  throw new Error(`The export has faults: ${read.faults.map(({ path, message }) => `${path} ${message}`).join('; ')}`);
};

/** Whether a plan made from nothing gives every order but those excepted a day no later than it was given or has now. */
const noneLater = (yard: YardFile, standing: Standing, days: ReadonlyMap<string, string>): boolean =>
  yard.orders.every(({ id, due }) => {
    const [was, is] = [standing.days.get(id), days.get(id)];
    if (due === undefined || was === undefined) return true;
    if (was === null) return true;
    return is !== undefined && (is <= due || is <= was);
  });

const daysFromNothing = (yard: YardFile): Map<string, string> =>
  new Map(planYard(yard, { effort: 'normal' }).orders.map(({ id, completesOn }) => [id, completesOn]));

/** The day an order could have beside all others by a plan made from nothing with none of them later; null for none. */
export const dayFromNothing = (
  yard: YardFile,
  standing: Standing,
  lines: YardFile['orders'][number]['lines'],
): string | null => {
  const days = daysFromNothing({ ...yard, orders: [...yard.orders, { id: 'asked', weight: 1, lines }] });
  return noneLater(yard, standing, days) ? (days.get('asked') ?? null) : null;
};

/** Whether a plan made from nothing keeps the date of an order that the standing plan has late, no other getting later. */
export const couldBeKept = (yard: YardFile, standing: Standing, id: string): boolean => {
  const due = yard.orders.find((order) => order.id === id)?.due;
  const days = daysFromNothing(yard);
  const on = days.get(id);
  return due !== undefined && on !== undefined && on <= due && noneLater(yard, standing, days);
};
