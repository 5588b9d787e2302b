/** One part of a list that is too long for a page, and where the parts beside it begin. */
export interface ListPart<T> {
  items: readonly T[];
  /** How many come before it. */
  from: number;
  /** How many there are in all. */
  all: number;
  /** How many come before the part before it, and before the part after it; null: there is none. */
  before: number | null;
  after: number | null;
}

/** How much a part may weigh, and what each thing of the list does; without that each weighs 1. */
interface PartSize<T> {
  most: number;
  weigh?: (item: T) => number;
}

/**
 * A list in parts: in each as many as weigh no more than is allowed, and never none.
 *
 * Example: `listParts(['a', 'b', 'c'], { most: 2 })` is a and b, and then c.
 */
export const listParts = <T>(items: readonly T[], { most, weigh = () => 1 }: PartSize<T>): T[][] => {
  const parts: T[][] = [];
  let weight = Number.POSITIVE_INFINITY;
  for (const item of items) {
    weight += weigh(item);
    if (weight > most) {
      parts.push([]);
      weight = weigh(item);
    }
    parts.at(-1)!.push(item);
  }
  return parts;
};

/**
 * The part of a list in which the one stands that so many come before; the first where there is none such. Parts are always
 * the same ones, so that going on and back again leads to where one was.
 *
 * Example: `listPart(['a', 'b', 'c'], 1, { most: 2 })` has a and b, none before it, and the next one after 2.
 */
export const listPart = <T>(items: readonly T[], from: number, size: PartSize<T>): ListPart<T> => {
  const parts = listParts(items, size);
  const starts = [0];
  for (const part of parts) starts.push(starts.at(-1)! + part.length);
  const place = from < items.length ? starts.findLastIndex((start) => start <= from) : 0;
  return {
    ...{ items: parts[place] ?? [], from: starts[place]!, all: items.length },
    before: starts[place - 1] ?? null,
    after: place + 1 < parts.length ? starts[place + 1]! : null,
  };
};
