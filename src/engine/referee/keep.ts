import type { PlanPour } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import { type Finding, finder } from './finding.ts';
import type { Ground } from './ground.ts';

/** What must not change of a fixed pour; what it is for and when it is stripped may. */
const fixedPart = (pour: PlanPour): string =>
  [
    pour.mould,
    pour.casting,
    pour.oiled,
    ...[pour.prepStart, pour.prepEnd, pour.fillStart, pour.fillEnd].map(minuteOf),
  ].join();

const fixedPours = (pours: PlanPour[], batch: string): string =>
  pours
    .filter((x) => x.batch === batch)
    .map(fixedPart)
    .sort()
    .join('\n');

/**
 * R13: every fixed batch is in the plan with its pours as they were, or dropped for a reason; nothing else is dropped.
 *
 * Example: a fixed pour that is in another mould now is found: "fixed batch B1 has changed".
 */
export const checkKeep = (ground: Ground): Finding[] => {
  const findings: Finding[] = [];
  const found = finder(findings, 'R13');
  const { plan } = ground;
  const { batches, pours } = ground.yard.keep ?? { batches: [], pours: [] };
  const dropped = new Set(plan.dropped.map((x) => x.batch));
  for (const fixed of batches) {
    const now = plan.batches.find((x) => x.id === fixed.id);
    if (dropped.has(fixed.id)) {
      if (now) found(`fixed batch ${fixed.id} is dropped, and yet there`);
      continue;
    }
    const same = now && now.mix === fixed.mix && minuteOf(now.start) === minuteOf(fixed.start);
    if (!same || fixedPours(plan.pours, fixed.id) !== fixedPours(pours, fixed.id))
      found(`fixed batch ${fixed.id} has changed`);
  }
  for (const batch of dropped)
    if (!batches.some((x) => x.id === batch)) found(`batch ${batch} is dropped, but was not fixed`);
  return findings;
};
