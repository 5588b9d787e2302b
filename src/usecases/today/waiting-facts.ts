import { stepsBefore } from '../plan/steps-before.ts';
import type { SessionStep } from './session-step.ts';
import type { WaitingFacts } from './today-model.ts';

const mouldsOf = (step: SessionStep): string[] => {
  if (step.kind === 'batch') return step.pours.map(({ mould }) => mould);
  return step.kind === 'coat' || step.kind === 'prep' || step.kind === 'strip' ? [step.mould] : [];
};

const placed = (step: SessionStep) => ({ moulds: mouldsOf(step), at: step.at });

/** Whether a step cannot be recorded, or begun, until others in its moulds are recorded. */
const isWaiting = (step: SessionStep): boolean =>
  step.kind === 'strip' ? !step.inMould : 'waits' in step && step.waits;

/** What is to be done later than this is not looked for yet; a batch may be begun sooner than planned. */
const SOON_MS = 30 * 60_000;

const isSoon = ({ kind, at }: SessionStep, now: string): boolean =>
  kind === 'batch' || Date.parse(at) <= Date.parse(now) + SOON_MS;

/**
 * Steps, in order of time, that wait for others in their moulds which are over and not recorded, each with those; of one
 * that waits for something still to come too there is nothing to be recorded yet.
 */
export const waitingFacts = (steps: readonly SessionStep[], now: string): WaitingFacts[] => {
  const isOver = ({ until }: SessionStep): boolean => Date.parse(until) <= Date.parse(now);
  return steps
    .filter((step) => isWaiting(step) && isSoon(step, now))
    .flatMap((step) => {
      const before = stepsBefore(steps, step, placed);
      return before.length > 0 && before.every(isOver) ? [{ step: step.name, before }] : [];
    });
};
