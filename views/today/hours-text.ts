import { listText } from '../../shared/list-text.ts';
import { countText, plural } from '../../shared/plural.ts';
import type { LeftForLater } from '../../src/usecases/plan/save-edit.ts';
import type { SessionEffect, StepLeftOut } from '../../src/usecases/plan/session-effect.ts';
import { clockText } from '../parts/day-text.ts';
import { countWord } from '../parts/quantity-text.ts';

/** "Two more pieces can be poured that day." */
export const morePiecesText = (more: number): string =>
  `${countWord(more)} more ${plural(more, 'piece')} can be poured that day.`;

const VERBS = { pour: 'pour', strip: 'strip', pack: 'pack for' } as const;

const stepText = ({ kind, what, at }: StepLeftOut): string => `${VERBS[kind]} ${what} (${clockText(at)})`;

/** "No longer fits, and is left for another day: pour 900 no. 1 (11:20) and pack for School garden (11:40)." */
export const leftOutText = (leftOut: SessionEffect['leftOut']): string =>
  `No longer fits, and is left for another day: ${listText(leftOut.map(stepText))}.`;

/** "3 pieces for School garden" */
export const leftForText = ({ pieces, customer }: LeftForLater): string =>
  `${countText(pieces, 'piece')} for ${customer}`;
