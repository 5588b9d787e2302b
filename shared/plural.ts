const RULES = new Intl.PluralRules('en-GB');

/**
 * The word for so many of something.
 *
 * `plural(1, 'batch', 'batches')` is "batch", `plural(0.5, 'bag')` "bags".
 */
export const plural = (count: number, one: string, many = `${one}s`): string =>
  RULES.select(count) === 'one' ? one : many;

/**
 * The number with its word.
 *
 * `countText(1, 'piece')` is "1 piece", `countText(4, 'person', 'people')` "4 people".
 */
export const countText = (count: number, one: string, many = `${one}s`): string =>
  `${count} ${plural(count, one, many)}`;
