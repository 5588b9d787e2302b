import { countText } from '../../shared/plural.ts';
import type { MouldModel, ShownEntry } from '../../src/usecases/moulds/show-mould.ts';
import { countedText } from '../parts/quantity-text.ts';
import { partText } from './mould-text.ts';

const becauseText = (reason: string | null): string => (reason ? `: ${reason}` : '');

const CAME_OUT_WORDS = { good: 'good', mend: 'to be mended', scrap: 'scrapped' } as const;

/** What was done, without its time: "Panel 1200 stripped, to be mended: a corner". */
export const entryText = (entry: ShownEntry): string => {
  switch (entry.kind) {
    case 'poured':
      return `${entry.piece} poured, for ${entry.customer ?? 'stock'}`;
    case 'thrown away':
      return `Batch with ${entry.piece} thrown away`;
    case 'stripped':
      return `${entry.piece} stripped, ${CAME_OUT_WORDS[entry.cameOut]}${becauseText(entry.reason)}`;
    case 'after mending':
      return entry.cameOut === 'good' ? `${entry.piece} mended` : `${entry.piece} scrapped after all`;
    case 'part':
      return partText({ ...entry, note: entry.reason ?? undefined });
    case 'not hard':
      return `${entry.piece} looked at, not hard yet`;
    case 'coated':
      return 'Sealing coat';
    case 'cleaned':
      return 'Cleaned';
    case 'serviced':
      return 'Looked over';
    default:
      return `${entry.kind === 'damaged' ? 'Damaged' : entry.kind === 'mended' ? 'Mended' : 'Scrapped'}${becauseText(entry.reason)}`;
  }
};

/** "5 of 31 scrapped; of the others 1 in 20." with how far that can be believed. */
const scrappedText = ({ turns, scrapped, others, differs }: MouldModel['history']): string => {
  const own = `${scrapped === 0 ? 'None' : scrapped} of ${turns} scrapped`;
  if (others.of === 0) return `${own}.`;
  const rest = others.scrapped === 0 ? `none of ${others.of}` : `1 in ${Math.round(others.of / others.scrapped)}`;
  const so =
    differs === 'more' ? ' That is more than chance.' : differs === 'fewer' ? ' That is fewer than by chance.' : '';
  return `${own}; of those from other moulds ${rest}.${so}`;
};

/** What a mould has been through, a sentence each. */
export const historySentences = ({ history, entriesInAll }: Pick<MouldModel, 'history' | 'entriesInAll'>): string[] => {
  const { turns, reasons, coats, daysOut } = history;
  if (entriesInAll === 0) return ['Nothing of it was recorded yet.'];
  const why = reasons.flatMap(({ name, count }) => Array<string>(count).fill(name));
  return [
    ...(turns > 0 ? [`${countText(turns, 'piece')} came out of it.`, scrappedText(history)] : []),
    ...(why.length > 0 ? [`What was wrong: ${countedText(why)}.`] : []),
    ...(coats > 0 ? [`Sealed ${coats === 1 ? 'once' : `${coats} times`}.`] : []),
    ...(daysOut > 0 ? [`Out of use for ${countText(daysOut, 'day')} in all.`] : []),
  ];
};
