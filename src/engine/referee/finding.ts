/** One way in which a plan breaks a rule: which of R0–R14, and what is wrong, in plain words. */
export interface Finding {
  rule: string;
  message: string;
}

/** Collects findings of one rule: `finder(findings, 'R2')('two at once')` adds `{ rule: 'R2', message: 'two at once' }`. */
export const finder =
  (findings: Finding[], rule: string) =>
  (message: string): void => {
    findings.push({ rule, message });
  };

/** Sums are of fractions, so they are compared with this to spare. */
export const TOLERANCE = 1e-6;
