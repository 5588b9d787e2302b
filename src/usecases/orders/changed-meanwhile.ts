import { quoted } from '../../../shared/said-back.ts';
import type { FormFields } from '../typed/form-fields.ts';

/** The form of an order that somebody else changed while it was filled in. */
export interface Merged {
  /** What was typed; what was left as it was is now as the other one has it. */
  typed: FormFields;
  /** What is said beside each field that was changed meanwhile. */
  errors: Record<string, string>;
}

/** How the form of an order stood when it was filled in, how it would now, and what was typed into it. */
interface ThreeWays {
  base: FormFields;
  now: FormFields;
  typed: FormFields;
}

const FIELDS = ['customer', 'phone', 'address', 'wantedOn', 'notBefore', 'promisedOn', 'heldUntil', 'slip', 'note'];
const LINE = /^(what|quantity)\d+(Was)?$/;

const wordsOf = (text: string | undefined): string => (text ? quoted(text) : 'nothing');

const told = (from: string, to: string, isTyped: boolean): string =>
  isTyped
    ? `It was changed to ${to} meanwhile. What you typed still stands here.`
    : `It was changed meanwhile, from ${from}.`;

const mergeField = ({ base, now, typed }: ThreeWays, merged: Merged, name: string): Merged => {
  if ((base[name] ?? '') === (now[name] ?? '')) return merged;
  const isTyped = (typed[name] ?? '') !== (base[name] ?? '');
  const errors = { ...merged.errors, [name]: told(wordsOf(base[name]), wordsOf(now[name]), isTyped) };
  return { typed: isTyped ? merged.typed : { ...merged.typed, [name]: now[name] ?? '' }, errors };
};

const linesIn = (fields: FormFields): FormFields =>
  Object.fromEntries(Object.entries(fields).filter(([name, value]) => LINE.test(name) && value !== ''));

const sameLines = (a: FormFields, b: FormFields): boolean => {
  const text = (fields: FormFields) => JSON.stringify(Object.entries(linesIn(fields)).sort());
  return text(a) === text(b);
};

/** "2 × Planter, 1 × Panel 900" */
const linesText = (fields: FormFields, nameOf: (what: string) => string): string =>
  Object.keys(fields)
    .filter((name) => /^what\d+$/.test(name) && fields[name] !== '')
    .map((name) => `${fields[name.replace('what', 'quantity')] ?? ''} × ${nameOf(fields[name]!)}`)
    .join(', ');

const mergeLines = (ways: ThreeWays, merged: Merged, nameOf: (what: string) => string): Merged => {
  const { base, now, typed } = ways;
  if (sameLines(base, now)) return merged;
  const isTyped = !sameLines(base, typed);
  const [from, to] = [linesText(base, nameOf), linesText(now, nameOf)];
  const others = Object.fromEntries(Object.entries(merged.typed).filter(([name]) => !LINE.test(name)));
  return {
    typed: isTyped ? merged.typed : { ...others, ...linesIn(now) },
    errors: { ...merged.errors, what0: told(from, to, isTyped) },
  };
};

/**
 * What two people make of one order: what only the other one changed is taken over and said, what both changed stands as it
 * was typed and says what the other one made of it. `nameOf` names what is ordered.
 */
export const mergeMeanwhile = (ways: ThreeWays, nameOf: (what: string) => string): Merged => {
  const start: Merged = { typed: ways.typed, errors: {} };
  return mergeLines(
    ways,
    FIELDS.reduce((merged, name) => mergeField(ways, merged, name), start),
    nameOf,
  );
};
