import type { CameOut } from '../../../shared/piece-to-mend.ts';
import { countText } from '../../../shared/plural.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { bagsPoured } from '../../engine/book/pour.ts';
import type { PourWork, StripWork, WorkDone } from '../../engine/book/work-done.ts';

const CAME_OUT_WORDS: Readonly<Record<CameOut, string>> = {
  good: '',
  mend: ', the piece is to be mended',
  scrap: ', the piece is scrapped',
};

/** "900 no. 1 stripped on Sat 10 Apr at 10:05, the piece is to be mended: corner broken off"; `when` may be empty. */
export const strippedWords = ({ mould, cameOut, reason }: Omit<StripWork, 'doneAt'>, when = ''): string => {
  const why = cameOut === 'good' || reason === '' ? '' : `: ${reason}`;
  return `${mould} stripped${when}${CAME_OUT_WORDS[cameOut]}${why}`;
};

/** "2 pieces from 1 bag: Panel 900 in 900 no. 1, Panel 900 in 900 no. 2 for order 27-001" */
const pouredSaid = (work: PourWork, yard: YardFile): string => {
  const bags = bagsPoured(work, yard)?.bags ?? 0;
  const pieces = work.pours.map(({ mould, casting, order }) => {
    const piece = yard.castings.find(({ id }) => id === casting)?.name ?? casting;
    return `${piece} in ${mould}${order === null ? '' : ` for order ${order}`}`;
  });
  return `${countText(work.pours.length, 'piece')} from ${countText(bags, 'bag')}: ${pieces.join(', ')}`;
};

/**
 * What work comes to beside when it was done, in the words in which the maker is told that it is recorded already. Work that
 * is told with other words is other work.
 */
export const workSaid = (work: WorkDone, yard: YardFile): string => {
  switch (work.kind) {
    case 'poured':
      return pouredSaid(work, yard);
    case 'stripped':
      return strippedWords(work);
    case 'coated':
      return `${work.mould} coated`;
    case 'set up':
      return `${work.mould} set up for ${yard.castings.find(({ id }) => id === work.casting)?.name ?? work.casting}`;
    case 'packed':
      return `order ${work.order} packed${work.minutes === undefined ? '' : `, ${work.minutes} minutes of it`}`;
  }
};

/** The instant at which work was done; of a batch, at which its last mould was full. */
export const workDoneAt = (work: WorkDone): string =>
  work.kind === 'poured'
    ? work.pours.map(({ filledAt }) => filledAt).reduce((a, b) => (Date.parse(a) > Date.parse(b) ? a : b))
    : work.doneAt;
