/**
 * The same sentence in US English. All sentences are written in British English, with days as "Sat 8 May" and a clock of 24
 * hours; this is the one place that knows how they are said on the other side of the ocean. Words from memory, checked by
 * reading; which of two spellings is whose is common knowledge and has no one source.
 */

/** British beginnings of words and what they are here; the rest of the word stays as it is. In small letters. */
const STEMS: readonly (readonly [british: string, us: string])[] = [
  ['mould', 'mold'],
  ['demould', 'demold'],
  ['colour', 'color'],
  ['labour', 'labor'],
  ['favour', 'favor'],
  ['neighbour', 'neighbor'],
  ['behaviour', 'behavior'],
  ['harbour', 'harbor'],
  ['vapour', 'vapor'],
  ['fibre', 'fiber'],
  ['fibreglass', 'fiberglass'],
  ['centre', 'center'],
  ['centred', 'centered'],
  ['metre', 'meter'],
  ['millimetre', 'millimeter'],
  ['centimetre', 'centimeter'],
  ['kilometre', 'kilometer'],
  ['litre', 'liter'],
  ['millilitre', 'milliliter'],
  ['plasticiser', 'plasticizer'],
  ['superplasticiser', 'superplasticizer'],
  ['galvanis', 'galvaniz'],
  ['organis', 'organiz'],
  ['recognis', 'recogniz'],
  ['realis', 'realiz'],
  ['minimis', 'minimiz'],
  ['summaris', 'summariz'],
  ['apologis', 'apologiz'],
  ['grey', 'gray'],
  ['kerb', 'curb'],
  ['cancelled', 'canceled'],
  ['cancelling', 'canceling'],
  ['labelled', 'labeled'],
  ['labelling', 'labeling'],
  ['levelled', 'leveled'],
  ['levelling', 'leveling'],
  ['travelled', 'traveled'],
  ['travelling', 'traveling'],
  ['modelled', 'modeled'],
  ['catalogue', 'catalog'],
  ['cheque', 'check'],
  ['programme', 'program'],
  ['practis', 'practic'],
  ['licence', 'license'],
  ['defence', 'defense'],
  ['ageing', 'aging'],
  ['judgement', 'judgment'],
  ['aluminium', 'aluminum'],
  ['sulphate', 'sulfate'],
  ['sulphur', 'sulfur'],
  ['fulfil', 'fulfill'],
  ['instalment', 'installment'],
  ['fortnight', 'two weeks'],
  ['tick', 'check'],
];

/** Words that begin like one of the stems and are spelled alike on both sides. */
const ALIKE = /^(fulfill|realis[mt]|ticket|organism|programm(ed|er|ing))/;

const US_STEM = new Map(STEMS);
const BRITISH_WORD = new RegExp(
  `\\b(${STEMS.map(([british]) => british)
    .sort((a, b) => b.length - a.length)
    .join('|')})(?=[a-z]*\\b)`,
  'gi',
);

const inCaseOf = (model: string, word: string): string => {
  if (model === model.toUpperCase()) return word.toUpperCase();
  return model[0] === model[0]?.toUpperCase() ? word[0]?.toUpperCase() + word.slice(1) : word;
};

/** "Mould 3 is full: no colour." is "Mold 3 is full: no color." */
const spelled = (text: string): string =>
  text.replaceAll(BRITISH_WORD, (stem: string, _stem: string, at: number) => {
    const word = /^[a-z]*/i.exec(text.slice(at))?.[0] ?? '';
    return ALIKE.test(word.toLowerCase()) ? stem : inCaseOf(stem, US_STEM.get(stem.toLowerCase()) ?? stem);
  });

const WEEKDAY = 'Mon(?:day)?|Tue(?:sday)?|Wed(?:nesday)?|Thu(?:rsday)?|Fri(?:day)?|Sat(?:urday)?|Sun(?:day)?';
const MONTH =
  'Jan(?:uary)?|Feb(?:ruary)?|Mar(?:ch)?|Apr(?:il)?|May|June?|July?|Aug(?:ust)?|Sep(?:tember)?|Oct(?:ober)?|Nov(?:ember)?|Dec(?:ember)?';
const DAY_FIRST = new RegExp(`(?:\\b(${WEEKDAY}) )?(?<![\\w.:-])(\\d{1,2}) (${MONTH})\\b(?: (20\\d\\d)\\b)?`, 'g');

/** "Sat 8 May 2027" is "Sat, May 8, 2027", "8 May" is "May 8". */
const monthFirst = (text: string): string =>
  text.replaceAll(
    DAY_FIRST,
    (_all, weekday: string | undefined, day: string, month: string, year: string | undefined) =>
      [...(weekday ? [weekday] : []), `${month} ${day}`, ...(year ? [year] : [])].join(', '),
  );

const CLOCK = /(?<![\w:.,/-])([01]?\d|2[0-4]):([0-5]\d)(?!\w|:\d|\.\d| ?[ap]m\b)/g;

/** "13:30" is "1:30 pm", "8:00" is "8 am", "24:00" is "midnight". */
const twelveHours = (text: string): string =>
  text.replaceAll(CLOCK, (_all, hours: string, minutes: string) => {
    const hour = Number(hours);
    if (hour === 24) return 'midnight';
    return `${hour % 12 === 0 ? 12 : hour % 12}${minutes === '00' ? '' : `:${minutes}`} ${hour < 12 ? 'am' : 'pm'}`;
  });

/**
 * A sentence of the program in US English: "Mould 3 by Sat 8 May, 13:30" is "Mold 3 by Sat, May 8, 1:30 pm". What is in it of
 * the yard's own words has to be kept out of it first (`usPage`).
 */
export const usText = (text: string): string => twelveHours(monthFirst(spelled(text)));
