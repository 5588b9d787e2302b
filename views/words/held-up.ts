import type { HeldUpBy } from '../../src/usecases/first/held-up-by.ts';

const OTHERS: Readonly<Record<string, (name: string | null) => string>> = {
  mended: (name) => `${name}, until it is mended`,
  session: () => 'hours of work',
  hands: () => 'too few hands',
  evening: () => 'moulds that wait to be stripped',
  material: (name) => `${name}, which has to come first`,
  rack: () => 'room to cure in',
  mixer: () => 'the size of the mixer',
};

/** "1200 moulds" or "hours of work": what a date waits for. Empty for a kind of limit that has no words yet. */
const heldUpBy = (hold: HeldUpBy): string => {
  if (hold.limit === 'other') return OTHERS[hold.kind]?.(hold.name) ?? '';
  if (hold.kind === null) return `moulds for ${hold.makes}`;
  return hold.count === 1 ? `the only ${hold.kind} mould` : `${hold.kind} moulds`;
};

/** "Held up by: 1200 moulds." Nothing for a kind of limit that has no words yet. */
export const heldUpText = (hold: HeldUpBy): string => {
  const by = heldUpBy(hold);
  return by === '' ? '' : `Held up by: ${by}.`;
};
