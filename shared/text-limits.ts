/** What something, or somebody, is called: a longer one fits no line of a sheet. */
export const LONGEST_NAME = 60;
/** "bag", "kg", "sheet": a word beside a number. */
export const LONGEST_UNIT = 20;
/** A note: about a page of writing. */
export const LONGEST_NOTE = 2000;

/**
 * What is said of a text that is longer than it may be.
 *
 * `tooLongText(60)` is "That is too long. 60 letters are the most."
 */
export const tooLongText = (most: number): string =>
  `That is too long. ${most.toLocaleString('en')} letters are the most.`;

/**
 * Letters of a text as whoever typed it counts them, a line's end as one.
 *
 * `lettersOf('two\r\nlines')` is 9.
 */
export const lettersOf = (text: string): number => [...plainText(text)].length;

/**
 * A text as it is compared with another one: a browser ends lines otherwise than a file, and blanks around it count for nothing.
 *
 * `plainText(' a\r\nb ')` is "a\nb".
 */
export const plainText = (text: string): string => text.replaceAll('\r\n', '\n').trim();
