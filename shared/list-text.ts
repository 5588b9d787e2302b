const AND = new Intl.ListFormat('en-GB', { style: 'long', type: 'conjunction' });

/** A comma between two figures belongs to a number: 1,250.50. */
const COMMA_OF_ITS_OWN = /,(?!\d)/;

/**
 * Things one after another, as in a sentence; where a name has a comma of its own, semicolons part them.
 *
 * `listText(['a', 'b', 'c'])` is "a, b and c", `listText(['a, 25 kg', 'b', 'c'])` "a, 25 kg; b; and c".
 */
export const listText = (items: readonly string[]): string => {
  const isLong = items.length > 2 && items.some((item) => COMMA_OF_ITS_OWN.test(item));
  return isLong ? `${items.slice(0, -1).join('; ')}; and ${items.at(-1)}` : AND.format(items);
};

/**
 * As `listText`, of a list that may be long: the first so many by name, and how many more there are.
 *
 * `shortListText(['a', 'b', 'c', 'd'], 2)` is "a, b and 2 more".
 */
export const shortListText = (items: readonly string[], most: number): string =>
  listText(items.length > most ? [...items.slice(0, most), `${items.length - most} more`] : items);
