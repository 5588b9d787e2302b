import { expect, test } from 'vitest';
import { heldUpText } from '../../../views/words/held-up.ts';

const moulds = { limit: 'mould', count: 2, kind: '1100', makes: 'Panel 1100' } as const;

test.each([
  [moulds, 'Held up by: 1100 moulds.'],
  [{ ...moulds, count: 1 }, 'Held up by: the only 1100 mould.'],
  [{ ...moulds, kind: null }, 'Held up by: moulds for Panel 1100.'],
  [{ limit: 'other', kind: 'mended', name: '900 no. 2' }, 'Held up by: 900 no. 2, until it is mended.'],
  [{ limit: 'other', kind: 'material', name: 'Pin rod' }, 'Held up by: Pin rod, which has to come first.'],
  [{ limit: 'other', kind: 'session', name: '2027-04-06' }, 'Held up by: hours of work.'],
  [{ limit: 'other', kind: 'something new', name: null }, ''],
] as const)('%j is said as %j', (held, text) => expect(heldUpText(held)).toBe(text));
