/** Without capitals and accents, so that "moran" finds "Móran". */
const plain = (text: string): string => text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();

/** True when every word that was typed is in one of the texts. Nothing typed finds everything. */
export const hasWords = (find: string, texts: readonly (string | null | undefined)[]): boolean => {
  const all = plain(texts.filter(Boolean).join('\n'));
  return plain(find)
    .split(/\s+/)
    .every((word) => all.includes(word));
};

/** True when all of what was typed stands in a text as it is. */
export const hasPhrase = (find: string, text: string): boolean => plain(text).includes(plain(find));

/** The first choice goes without saying: anything else that is no choice counts as it. */
export const chosenOf = <T extends string>(choices: readonly T[], text: string | undefined): T =>
  choices.find((choice) => choice === text) ?? choices[0]!;
