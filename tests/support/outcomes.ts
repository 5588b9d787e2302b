import type { Outcome } from '../../src/usecases/core/context.ts';

/** What a use case did; where it was refused, an error that says why. */
export const doneOf = <T>(outcome: Outcome<T>): T => {
  if (!outcome.ok) throw new Error(outcome.faults.map(({ path, message }) => `${path}: ${message}`).join('; '));
  return outcome.value;
};

/** Why a use case was refused, as "field: words"; "done" where it was not. */
export const refusalOf = (outcome: Outcome<unknown>): string => {
  if (outcome.ok) return 'done';
  return outcome.faults.map(({ path, message }) => `${path}: ${message}`).join('; ');
};
