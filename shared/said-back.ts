/** So much of what was typed says which it was; the field keeps all of it. */
const LONGEST = 40;

/**
 * A text as it is said back to who wrote it, without blanks round it and no longer than `longest` letters.
 *
 * Example: `shortened('a long name', 7)` is "a long…".
 */
export const shortened = (text: string, longest = LONGEST): string => {
  const letters = [...text.trim()];
  return letters.length <= longest
    ? text.trim()
    : `${letters
        .slice(0, longest - 1)
        .join('')
        .trimEnd()}…`;
};

/**
 * The same in quotation marks.
 *
 * Example: `quoted(' 2 bgas ')` is '"2 bgas"'.
 */
export const quoted = (text: string): string => `"${shortened(text)}"`;

/**
 * That something is not there, by the name it was given.
 *
 * Example: `thereIsNo('mould', '900 no. 9')` is "There is no mould 900 no. 9.", `thereIsNo('mould', '')` "Which mould? None was named."
 */
export const thereIsNo = (what: 'mould' | 'order', name: string): string =>
  name.trim() === '' ? `Which ${what}? None was named.` : `There is no ${what} ${shortened(name)}.`;
