import type { FC } from 'hono/jsx';
import type { SessionStep } from '../../src/usecases/today/session-step.ts';
import { frostText } from './step-caution.tsx';

/** On paper: that the nights after a session may bring frost, where something is poured in it. */
export const FrostLine: FC<{ steps: readonly SessionStep[] }> = ({ steps }) => {
  const [cold] = steps.flatMap((step) => (step.kind === 'batch' && step.coldNights ? [step.coldNights] : []));
  return cold === undefined ? null : <p class="sheet-caution">{frostText(cold)}</p>;
};
