import { setImmediate as othersFirst } from 'node:timers/promises';
import type { PlanFile } from '../shared/plan.ts';
import { piecesOfPlan, planReader } from '../shared/plan-pieces.ts';

/** Under these names questions and answers have a plan. */
const PLANS = ['near', 'plan'] as const;

type Named = Record<string, unknown>;

/**
 * A question to a thread, or its answer, as it is sent. What is sent is copied on both sides, each in one go: a large plan
 * is therefore sent as its pieces, since texts are copied in no time.
 */
export const asMessage = (said: unknown): unknown => {
  if (typeof said !== 'object' || said === null || Array.isArray(said)) return said;
  const message: Named = { ...said };
  for (const name of PLANS) if (message[name]) message[name] = [...piecesOfPlan(message[name] as PlanFile)];
  return message;
};

const joined = async (pieces: readonly string[]): Promise<PlanFile | null> => {
  const reader = planReader();
  for (const piece of pieces) {
    reader.add(piece);
    await othersFirst();
  }
  return reader.plan();
};

/** What was sent, each plan put together piece by piece: others are let in between two of them. */
export const fromMessage = async (message: unknown): Promise<unknown> => {
  if (typeof message !== 'object' || message === null || Array.isArray(message)) return message;
  const said: Named = { ...message };
  for (const name of PLANS) if (said[name]) said[name] = await joined(said[name] as string[]);
  return said;
};
