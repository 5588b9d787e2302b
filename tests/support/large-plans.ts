import type { PlanFile } from '../../shared/plan.ts';
import { planYard } from '../../src/engine/plan.ts';
import { scaledYard } from './scaled-yard.ts';

/** Two plans of several pieces each, of which neither is a part of the other. */
export const largePlans = (): [PlanFile, PlanFile] => [
  planYard(scaledYard(60, 12), { effort: 'quick' }),
  planYard(scaledYard(40, 12, { seed: 2 }), { effort: 'quick' }),
];
