/** What spreadsheets take for the beginning of a formula (OWASP, CSV injection), also after apostrophes of our own. */
const BEGINS = /^'*[=+\-@\t\r\n＝＋－＠]/;
const GUARDED = /^'+[=+\-@\t\r\n＝＋－＠]/;

/**
 * A text that no spreadsheet runs: with an apostrophe before it where it would be taken for a formula.
 *
 * Example: `guarded('=1+1')` is "'=1+1"; `guarded('2 x Panel')` stays as it is.
 */
export const guarded = (text: string): string => (BEGINS.test(text) ? `'${text}` : text);

/**
 * The text as it was before it was guarded; guarding and taking it away again changes no text.
 *
 * Example: `unguarded("'=1+1")` is "=1+1", `unguarded(guarded("'tis"))` is "'tis".
 */
export const unguarded = (cell: string): string => (GUARDED.test(cell) ? cell.slice(1) : cell);
