import type { PlanFile } from '../../shared/plan.ts';
import type { YardFile } from '../../shared/yard-file.ts';
import { checkBatches } from './referee/batches.ts';
import { checkBegun } from './referee/begun.ts';
import type { Finding } from './referee/finding.ts';
import { checkForm } from './referee/form.ts';
import { groundOf } from './referee/ground.ts';
import { checkKeep } from './referee/keep.ts';
import { checkMaterials } from './referee/materials.ts';
import { checkMoulds } from './referee/moulds.ts';
import { checkOrders } from './referee/orders.ts';
import { checkRack } from './referee/rack.ts';
import { checkScore } from './referee/score.ts';
import { checkSessions } from './referee/sessions.ts';

export type { Finding } from './referee/finding.ts';

/**
 * Every way in which a plan breaks the rules of the yard file contract, R0 to R14; none for a plan that is in order. It
 * shares hours, ages and temperatures with the planner, and nothing of how tasks are placed. Where the form is at fault
 * (R0) the other rules are not checked. R12 is about two plans, and is not checked here; nor is whether an order that was
 * left out could have been made.
 *
 * Example: `refereePlan(yard, planYard(yard))` is [].
 */
export const refereePlan = (yard: YardFile, plan: PlanFile): Finding[] => {
  const form = checkForm(yard, plan);
  if (form.length > 0) return form;
  const ground = groundOf(yard, plan);
  return [
    checkSessions,
    checkBatches,
    checkMoulds,
    checkRack,
    checkOrders,
    checkMaterials,
    checkKeep,
    checkBegun,
    checkScore,
  ].flatMap((check) => check(ground));
};
