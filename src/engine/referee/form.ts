import { pathText } from '../../../shared/fault.ts';
import { type PlanFile, planFile } from '../../../shared/plan.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { type Finding, finder } from './finding.ts';
import { underWayOf } from './under-way.ts';

const namesOf = (list: { id: string }[]): Set<string> => new Set(list.map((x) => x.id));

/** Every name that a plan uses, with where it stands and what it should name. */
const namesUsed = (
  yard: YardFile,
  plan: PlanFile,
): { names: Set<string>; kind: string; used: [string, string][] }[] => {
  const ofOrders = [
    ...plan.pours.flatMap((x): [string, string][] => (x.order === undefined ? [] : [[`pour ${x.id}`, x.order]])),
    ...plan.strips.flatMap((x): [string, string][] => (x.order === undefined ? [] : [[`strip ${x.mould}`, x.order]])),
    ...plan.orders.map((x): [string, string] => ['orders', x.id]),
    ...plan.unplanned.map((x): [string, string] => ['unplanned', x.order]),
  ];
  const ofMaterials = [
    ...plan.sticks.map((x): [string, string] => ['sticks', x.material]),
    ...(plan.sheets ?? []).map((x): [string, string] => ['sheets', x.material]),
    ...plan.buys.map((x): [string, string] => ['buys', x.material]),
  ];
  const ofMoulds = [
    ...plan.pours.map((x): [string, string] => [`pour ${x.id}`, x.mould]),
    ...plan.coats.map((x): [string, string] => ['coats', x.mould]),
    ...plan.strips.map((x): [string, string] => ['strips', x.mould]),
    ...plan.unstripped.map((x): [string, string] => ['unstripped', x.mould]),
  ];
  return [
    { names: namesOf(yard.orders), kind: 'order', used: ofOrders },
    { names: namesOf(yard.moulds), kind: 'mould', used: ofMoulds },
    { names: namesOf(yard.materials), kind: 'material', used: ofMaterials },
    { names: namesOf(yard.mixes), kind: 'mix', used: plan.batches.map((x) => [`batch ${x.id}`, x.mix]) },
    { names: namesOf(yard.castings), kind: 'casting', used: plan.pours.map((x) => [`pour ${x.id}`, x.casting]) },
    { names: namesOf(plan.batches), kind: 'batch', used: plan.pours.map((x) => [`pour ${x.id}`, x.batch]) },
    { names: namesOf(plan.batches), kind: 'batch', used: (plan.sheets ?? []).map((x) => ['sheets', x.for]) },
    {
      names: namesOf(plan.pours),
      kind: 'pour',
      used: plan.batches.flatMap((x) => x.pours.map((p): [string, string] => [`batch ${x.id}`, p])),
    },
  ];
};

const checkTwice = (found: (message: string) => void, kind: string, names: string[]): void => {
  const seen = new Set<string>();
  for (const name of names) {
    if (seen.has(name)) found(`${kind} ${name} is there twice`);
    seen.add(name);
  }
};

/**
 * R0: every field there and of its kind, every instant with an offset, every name known, no name twice. The other rules
 * are checked only on a plan that has passed this one.
 *
 * Example: a pour of a mould that the yard has not is found as "pour P1: there is no mould X".
 */
export const checkForm = (yard: YardFile, plan: PlanFile): Finding[] => {
  const findings: Finding[] = [];
  const found = finder(findings, 'R0');
  const read = planFile.safeParse(plan);
  if (!read.success) {
    for (const issue of read.error.issues) found(`${pathText(issue.path)}: ${issue.message}`);
    return findings;
  }
  for (const { names, kind, used } of namesUsed(yard, plan))
    for (const [where, name] of used) if (!names.has(name)) found(`${where}: there is no ${kind} ${name}`);
  checkTwice(
    found,
    'batch',
    plan.batches.map((x) => x.id),
  );
  checkTwice(
    found,
    'pour',
    plan.pours.map((x) => x.id),
  );
  const held = new Set(yard.inMould.map((x) => x.mould));
  const { batches } = underWayOf(yard);
  const filled = new Set(plan.pours.flatMap((x) => (batches.has(x.batch) ? [x.mould] : [])));
  for (const x of plan.strips) if (!held.has(x.mould)) found(`there is no piece in ${x.mould}`);
  for (const x of plan.unstripped)
    if (!held.has(x.mould) && !filled.has(x.mould)) found(`there is no piece in ${x.mould}`);
  checkTwice(
    found,
    'the piece in',
    [...plan.strips, ...plan.unstripped].map((x) => x.mould),
  );
  for (const order of plan.orders)
    for (const x of order.fromFinished)
      if (!yard.finished[x.finished]) found(`order ${order.id}: there is no finished lot ${x.finished}`);
  for (const x of plan.sticks) if (x.cuts.length === 0) found(`a stick of ${x.material} is opened for nothing`);
  const inSheets = new Set(yard.materials.flatMap(({ id, inSheets }) => (inSheets ? [id] : [])));
  for (const x of plan.sheets ?? []) if (!inSheets.has(x.material)) found(`${x.material} is not in sheets`);
  for (const x of [...plan.unplanned, ...plan.unstripped, ...plan.dropped])
    if (x.reason === '') found('what is left out has no reason');
  return findings;
};
