import type { DroppedTask } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import { type Finding, finder } from './finding.ts';
import { hasBatch, hasCoat, hasPack, hasPrep, hasStrip } from './firm-tasks.ts';
import type { Ground } from './ground.ts';

/** A task that is fixed, named as `dropped` names it, and whether the plan has it as it was. */
interface Firm {
  task: string;
  isThere: boolean;
}

const nameOf = (kind: string, name: string, start: string): string => `${kind} ${name} at ${minuteOf(start)}`;

const firmTasks = (ground: Ground): Firm[] => {
  const { batches = [], pours = [], strips = [], packs = [], preps = [], coats = [] } = ground.yard.keep ?? {};
  const firm = (task: string, isThere: boolean): Firm => ({ task, isThere });
  return [
    ...batches.map((x) => firm(nameOf('batch', x.id, x.start), hasBatch(ground, x, pours))),
    ...strips.map((x) => firm(nameOf('strip', x.mould, x.stripStart), hasStrip(ground, x))),
    ...packs.map((x) => firm(nameOf('pack', x.order, x.packStart), hasPack(ground, x))),
    ...preps.map((x) => firm(nameOf('prep', x.mould, x.prepStart), hasPrep(ground, x))),
    ...coats.map((x) => firm(nameOf('coat', x.mould, x.start), hasCoat(ground, x))),
  ];
};

const droppedName = ({ at, reason: _, ...named }: DroppedTask): string => {
  const [kind, name] = Object.entries(named)[0]!;
  return nameOf(kind, name, at);
};

const inWords = (task: string): string => task.slice(0, task.lastIndexOf(' at '));

/**
 * R13: every fixed task is in the plan as it was, or dropped for a reason; nothing else is dropped.
 *
 * Example: a fixed pour that is in another mould now is found: "fixed batch B1 has changed".
 */
export const checkKeep = (ground: Ground): Finding[] => {
  const findings: Finding[] = [];
  const found = finder(findings, 'R13');
  const { plan } = ground;
  const firm = firmTasks(ground);
  const dropped = new Set(plan.dropped.map(droppedName));
  for (const { task, isThere } of firm) if (!isThere && !dropped.has(task)) found(`fixed ${inWords(task)} has changed`);
  const known = new Set(firm.map(({ task }) => task));
  for (const task of dropped) if (!known.has(task)) found(`${inWords(task)} is dropped, but was not fixed`);
  for (const { batch } of plan.dropped)
    if (plan.batches.some((x) => x.id === batch)) found(`fixed batch ${batch} is dropped, and yet there`);
  return findings;
};
