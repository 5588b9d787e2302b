import { openDatabase } from '../../../db/open.ts';
import { storedPlan } from '../../../db/stores/plan-store.ts';
import type { PlanFile } from '../../../shared/plan.ts';
import { readYardFile, type YardFile } from '../../../shared/yard-file.ts';
import { refereePlan } from '../../../src/engine/referee.ts';
import { audit, needs } from '../../contract/audit-plan.mjs';
import { formsIn, plainText } from '../../support/page-form.ts';
import type { PageVisitor } from './page-visitor.ts';

type Amounts = ReadonlyMap<string, number>;

const LITTLE = 1e-6;
/** Pages write two decimals. */
const SHOWN = 0.005 + LITTLE;

const added = (amounts: Map<string, number>, key: string, quantity: number): void => {
  amounts.set(key, (amounts.get(key) ?? 0) + quantity);
};

/** All that a plan takes from the stock, by the recipes of the yard. */
const usedBy = (yard: YardFile, plan: PlanFile): Amounts => {
  const used = new Map<string, number>();
  for (const batch of plan.batches) {
    const mix = yard.mixes.find(({ id }) => id === batch.mix)!;
    for (const { material, quantity } of mix.perBag) added(used, material, quantity * batch.bags);
  }
  for (const { casting } of plan.pours)
    for (const { material, quantity } of yard.castings.find(({ id }) => id === casting)!.perPiece)
      added(used, material, quantity);
  for (const { id } of plan.orders)
    for (const [material, quantity] of needs(yard, yard.orders.find((one) => one.id === id)!).parts)
      added(used, material, quantity);
  for (const { material, offcutMm } of plan.sticks) if (offcutMm === undefined) added(used, material, 1);
  for (const { material, rest } of plan.sheets ?? []) if (rest === undefined) added(used, material, 1);
  return used;
};

/** What the page of a material has its plan take, line by line. */
const spokenFor = async (visitor: PageVisitor, id: string): Promise<{ sum: number; lines: number }> => {
  const html = await visitor.page(`/buying/spoken-for?${new URLSearchParams({ of: id })}`);
  const rows = [...html.matchAll(/<tr>([\s\S]*?)<\/tr>/g)].map(([, row = '']) => row);
  const uses = rows.filter((row) => !row.includes('Past its date') && row.includes('>−'));
  const amounts = uses.map((row) => Number(/>−([\d.]+)/.exec(plainNumbers(row))?.[1]));
  return { sum: amounts.reduce((sum, one) => sum + one, 0), lines: amounts.length };
};

const plainNumbers = (row: string): string => row.replace(/<!--.*?-->/g, '').replaceAll(',', '');

/** What Buying has to be bought, by its forms. */
const toBuy = (html: string): Amounts => {
  const amounts = new Map<string, number>();
  for (const { action, fields } of formsIn(html))
    if (action === '/buying/bought' && fields.line !== undefined && fields.quantityWas !== undefined)
      added(amounts, fields.material!, Number(fields.quantityWas));
  return amounts;
};

/** Where a plan, what its materials are spoken for and what is to be bought are not one truth; none where they are. */
const notOneTruth = async (visitor: PageVisitor, yard: YardFile, plan: PlanFile): Promise<string[]> => {
  const used = usedBy(yard, plan);
  const buying = toBuy(await visitor.page('/buying'));
  const faults: string[] = [];
  for (const material of yard.materials) {
    const { id, onHand, minimum, pack } = material;
    const use = used.get(id) ?? 0;
    const spoken = await spokenFor(visitor, id);
    if (Math.abs(spoken.sum - use) > SHOWN * Math.max(1, spoken.lines))
      faults.push(`${id}: the plan uses ${use}, spoken for are ${spoken.sum}`);
    const bought = plan.buys.reduce((sum, one) => (one.material === id ? sum + one.quantity : sum), 0);
    if (Math.abs(bought - (buying.get(id) ?? 0)) > LITTLE)
      faults.push(`${id}: the plan buys ${bought}, the list ${buying.get(id) ?? 0}`);
    const comes = yard.incoming.reduce((sum, one) => (one.material === id ? sum + one.quantity : sum), 0);
    const left = onHand + comes + bought - use;
    if (left < -LITTLE) faults.push(`${id}: ${left} are left once all is used`);
    const keepsForEver = !material.lots && material.shelfLifeDays === undefined && material.openedDays === undefined;
    const needless = bought > 0 && left - pack >= minimum - LITTLE;
    if (keepsForEver && needless) faults.push(`${id}: a pack less would do, ${left} are left`);
  }
  return faults;
};

/** An order that is complete already is complete at the minute of its plan, which has passed by the yard as it is saved now. */
const isOfComplete = (fault: string): boolean => /complete before its last piece/.test(fault);

const planStored = async (url: string): Promise<PlanFile> => {
  const database = await openDatabase({ url });
  const stored = await database.read(storedPlan);
  await database.close();
  return stored!.plan;
};

/** Faults of the plan that stands: by the audit, by the referee, and where it is not one truth with what pages say. */
export const planFaults = async (visitor: PageVisitor, databaseUrl: string): Promise<string[]> => {
  const today = plainText(await visitor.page('/today'));
  const read = readYardFile(JSON.parse(await visitor.page('/yard/files/yard.json')));
  if (!read.ok) return read.faults.map(({ path, message }) => `the saved yard: ${path} ${message}`);
  const plan = await planStored(databaseUrl);
  const checked = [
    ...audit(read.yard, plan).faults.map((fault) => `audit: ${fault}`),
    ...refereePlan(read.yard, plan).map((finding) => `referee: ${JSON.stringify(finding)}`),
  ].filter((fault) => !isOfComplete(fault));
  const truth = await notOneTruth(visitor, read.yard, plan);
  return [...checked, ...truth].map((fault) => `${fault} (Today: ${today.slice(0, 60)})`);
};
