import type { PlanPour } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import { type Finding, finder } from './finding.ts';
import type { Ground } from './ground.ts';

/** What must not change of a firm pour; what it is for and when it is stripped may. */
const firmPart = (pour: PlanPour): string =>
  [
    pour.mould,
    pour.casting,
    pour.oiled,
    ...[pour.prepStart, pour.prepEnd, pour.fillStart, pour.fillEnd].map(minuteOf),
  ].join();

const firmPours = (pours: PlanPour[], batch: string): string =>
  pours
    .filter((x) => x.batch === batch)
    .map(firmPart)
    .sort()
    .join('\n');

/**
 * R13: every firm batch is in the plan with its pours as they were, or dropped for a reason; nothing else is dropped.
 *
 * Example: a firm pour that is in another mould now is found: "firm batch B1 has changed".
 */
export const checkKeep = (ground: Ground): Finding[] => {
  const findings: Finding[] = [];
  const found = finder(findings, 'R13');
  const { plan } = ground;
  const { batches, pours } = ground.yard.keep ?? { batches: [], pours: [] };
  const dropped = new Set(plan.dropped.map((x) => x.batch));
  for (const firm of batches) {
    const now = plan.batches.find((x) => x.id === firm.id);
    if (dropped.has(firm.id)) {
      if (now) found(`firm batch ${firm.id} is dropped, and yet there`);
      continue;
    }
    const same = now && now.mix === firm.mix && minuteOf(now.start) === minuteOf(firm.start);
    if (!same || firmPours(plan.pours, firm.id) !== firmPours(pours, firm.id))
      found(`firm batch ${firm.id} has changed`);
  }
  for (const batch of dropped)
    if (!batches.some((x) => x.id === batch)) found(`batch ${batch} is dropped, but was not firm`);
  return findings;
};
