import { partWords } from '../../shared/mould-part.ts';
import { countText, plural } from '../../shared/plural.ts';
import { fromMomentText, momentText } from '../parts/clock-text.ts';
import { dayText } from '../parts/day-text.ts';
import type { MarkShape } from '../parts/mark.tsx';
import { countWord } from '../parts/quantity-text.ts';
import type { MouldFacts } from './mould-facts.ts';

/** A condition as a word and a shape. */
export const conditionOf = ({ condition, piece, prepped }: MouldFacts): { word: string; shape: MarkShape } => {
  if (condition === 'damaged') return { word: piece ? 'damaged, with a piece in it' : 'damaged', shape: 'triangle' };
  if (condition === 'retired') return { word: 'scrapped', shape: 'cross' };
  if (piece) return { word: 'full', shape: 'square' };
  if (condition === 'dirty') return { word: 'to be cleaned', shape: 'ring' };
  return { word: prepped ? 'clean and set up' : 'clean', shape: 'full' };
};

const forText = (customer: string | null): string => (customer ? ` for ${customer}` : '');

const pieceText = (piece: NonNullable<MouldFacts['piece']>, today: string): string => {
  const article = /^[aeiou]/i.test(piece.name) ? 'an' : 'a';
  const holds = `Holds ${article} ${piece.name}${forText(piece.customer)}, poured ${momentText(piece.filledAt, today)}`;
  if (piece.stripAt) return `${holds}; strip ${fromMomentText(piece.stripAt, today)} by today's plan.`;
  return piece.stays ? `${holds}; it stays in, because ${piece.stays}.` : `${holds}.`;
};

const pourText = ({ at, customer, late }: NonNullable<MouldFacts['nextPour']>, today: string): string => {
  const pour = `${momentText(at, today)}${forText(customer)}`;
  return late ? `Was to be poured ${pour}, which is not recorded yet.` : `Next pour ${pour}.`;
};

/** "Ends worn: soft corners" */
export const partText = (part: Parameters<typeof partWords>[0]): string => {
  const words = partWords(part);
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
};

const damageText = ({ damageNote, repairedOn }: MouldFacts, today: string): string => {
  const until =
    repairedOn === null
      ? 'Out of use until it is mended.'
      : repairedOn <= today
        ? `Was to be mended by ${dayText(repairedOn, today)}, and the plan counts on it: is it mended?`
        : `Should be mended ${dayText(repairedOn, today)}.`;
  return damageNote ? `${damageNote.replace(/\.$/, '')}. ${until}` : until;
};

const sealingText = (turns: number): string =>
  turns === 0
    ? 'The sealing coat is due before the next pour.'
    : `Sealing coat due after ${countText(turns, 'more turn')}.`;

const serviceText = (turns: number): string => {
  if (turns > 0) return `To be looked over after ${countText(turns, 'more turn')}.`;
  return turns === 0 ? 'Due to be looked over.' : `Due to be looked over, ${countText(-turns, 'turn')} ago.`;
};

/** Everything worth knowing about a mould besides its condition, a sentence each. */
export const mouldSentences = (mould: MouldFacts, today: string): string[] => [
  ...(mould.piece ? [pieceText(mould.piece, today)] : []),
  ...mould.troubled.map((part) => `${partText(part)}.`),
  ...(mould.condition === 'damaged' ? [damageText(mould, today)] : []),
  ...(mould.dryFrom ? [`Its sealing coat dries until ${momentText(mould.dryFrom, today)}.`] : []),
  ...(mould.nextPour ? [pourText(mould.nextPour, today)] : []),
  ...(mould.turnsToSealing !== null && mould.condition !== 'damaged' ? [sealingText(mould.turnsToSealing)] : []),
  ...(mould.turnsToService !== null && mould.condition !== 'damaged' ? [serviceText(mould.turnsToService)] : []),
  ...(mould.makes.length > 1 ? [`Makes ${mould.makes.join(' or ')}; set for ${mould.setFor}.`] : []),
  ...(mould.note ? [mould.note] : []),
];

/** "Nine of 11 moulds can be poured." A full or dirty one counts: it only has to be stripped or cleaned. */
export const mouldsAnswer = (moulds: readonly MouldFacts[]): string => {
  if (moulds.length === 0) return 'There is no mould in use.';
  const out = moulds.filter(({ condition }) => condition === 'damaged');
  if (out.length === 0)
    return moulds.length === 1 ? 'The one mould is in use.' : `All ${moulds.length} moulds are in use.`;
  const inUse = moulds.length - out.length;
  const names = out.map(({ id }) => id).join(', ');
  return `${countWord(inUse)} of ${moulds.length} moulds ${plural(inUse, 'is', 'are')} in use. Out: ${names}.`;
};

/** What a mould is filled with in a drawing; its word says the same. */
export type MouldFill = 'empty' | 'set-up' | 'dirty' | 'full' | 'damaged';

export const fillOf = ({ condition, piece, prepped }: MouldFacts): MouldFill => {
  if (condition === 'damaged' || condition === 'retired') return 'damaged';
  if (piece) return 'full';
  if (condition === 'dirty') return 'dirty';
  return prepped ? 'set-up' : 'empty';
};

/** "no. 2" of "1200 no. 2": what tells it from the others of its kind; all of it where it is the only one. */
export const paintedText = (id: string, kind: string): string =>
  id.startsWith(`${kind} `) ? id.slice(kind.length + 1) : id;

/** Below a mould on the map: for whom, and until when. '' where nothing is to come. */
export const untilText = (mould: MouldFacts, today: string): string => {
  const { condition, piece, repairedOn, nextPour } = mould;
  if (condition === 'damaged')
    return repairedOn === null ? 'until it is mended' : `until ${dayText(repairedOn, today)}`;
  if (piece) {
    const until = piece.stripAt ? `until ${dayText(piece.stripAt.slice(0, 10), today)}` : 'stays in';
    return piece.customer ? `${piece.customer}, ${until}` : until;
  }
  if (!nextPour) return '';
  return `next ${dayText(nextPour.at.slice(0, 10), today)}${nextPour.customer ? `, ${nextPour.customer}` : ''}`;
};
