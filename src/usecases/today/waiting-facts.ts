import { stepsBefore } from '../plan/steps-before.ts';
import type { SessionStep } from './session-step.ts';
import type { WaitingFacts } from './today-model.ts';

const mouldsOf = (step: SessionStep): string[] => {
  if (step.kind === 'batch') return step.pours.map(({ mould }) => mould);
  return step.kind === 'coat' || step.kind === 'prep' || step.kind === 'strip' ? [step.mould] : [];
};

const placed = (step: SessionStep) => ({ moulds: mouldsOf(step), at: step.at });

/** What is to be done later than this is not looked for yet; a batch may be begun sooner than planned. */
const SOON_MS = 30 * 60_000;

/**
 * Whether a step is asked for that cannot be recorded, or begun, until others in its moulds are recorded: a batch, or the
 * first strip of what it filled. Set-ups and coats come after a strip, which stands above them.
 */
const isWaiting = (step: SessionStep, now: string): boolean =>
  step.kind === 'batch'
    ? step.waits
    : step.kind === 'strip' && !step.inMould && Date.parse(step.at) <= Date.parse(now) + SOON_MS;

/**
 * Steps, in order of time, that wait for others in their moulds which are over and not recorded, each with those; of one
 * that waits for something still to come too there is nothing to be recorded yet. Of several strips that wait for the same
 * the first stands for all.
 */
export const waitingFacts = (steps: readonly SessionStep[], now: string): WaitingFacts[] => {
  const isOver = ({ until }: SessionStep): boolean => Date.parse(until) <= Date.parse(now);
  const known = new Set<SessionStep>();
  return steps
    .filter((step) => isWaiting(step, now))
    .flatMap((step) => {
      const before = stepsBefore(steps, step, placed);
      const isKnown = step.kind === 'strip' && before.every((one) => known.has(one) || one.kind === 'prep');
      for (const one of before) known.add(one);
      return before.length > 0 && !isKnown && before.every(isOver) ? [{ step: step.name, before }] : [];
    });
};
