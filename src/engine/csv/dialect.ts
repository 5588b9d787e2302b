/** How a CSV is written: cells apart by commas with decimal points, or by semicolons with decimal commas. */
export interface Dialect {
  separator: ',' | ';' | '\t';
  decimal: '.' | ',';
}

/** Commas between cells and decimal points: what spreadsheets write where English is spoken. */
export const POINTS: Dialect = { separator: ',', decimal: '.' };
/** Semicolons between cells and decimal commas: what spreadsheets write where a comma marks decimals. */
export const COMMAS: Dialect = { separator: ';', decimal: ',' };
const TABS: Dialect = { separator: '\t', decimal: '.' };

/** The first row, as far as its first line end outside quotes. */
const firstRow = (text: string): string => {
  let quoted = false;
  for (let at = 0; at < text.length; at++) {
    if (text[at] === '"') quoted = !quoted;
    else if (!quoted && (text[at] === '\n' || text[at] === '\r')) return text.slice(0, at);
  }
  return text;
};

/** A first line by which some spreadsheets say what stands between the cells: "sep=;". */
const SEPARATOR_LINE = /^\uFEFF?"?sep=(.)"?[ ]*(\r\n|\n|\r)/i;

/**
 * A text without the line that says what stands between its cells, and what that says; null where it says nothing known.
 *
 * Example: `separatorSaid('sep=;\nmould;note\n')` is `{ said: COMMAS, text: 'mould;note\n' }`.
 */
export const separatorSaid = (text: string): { said: Dialect | null; text: string } => {
  const [line, separator] = SEPARATOR_LINE.exec(text) ?? [];
  if (line === undefined) return { said: null, text };
  const said = [POINTS, COMMAS, TABS].find((one) => one.separator === separator) ?? null;
  return { said, text: text.slice(line.length) };
};

/**
 * A text without its first row, for one that has a title above its columns; null where there is no second row.
 *
 * Example: `withoutFirstRow('Our moulds\nmould;note\n')` is "mould;note\n".
 */
export const withoutFirstRow = (text: string): string | null => {
  const rest = text.slice(firstRow(text).length).replace(/^(\r\n|\n|\r)/, '');
  return rest === '' ? null : rest;
};

/**
 * The dialect of a text, by what stands most often in its first row outside quotes. A file with one column has commas.
 *
 * Example: `dialectOf('order;wanted\n')` is `COMMAS`.
 */
export const dialectOf = (text: string): Dialect => {
  const row = firstRow(text).replace(/"[^"]*"/g, '');
  const count = ({ separator }: Dialect) => row.split(separator).length;
  return [POINTS, COMMAS, TABS].reduce((best, one) => (count(one) > count(best) ? one : best));
};
