/**
 * Sorts a short list in place, equal ones staying in their order, and returns it. By insertion: the lists that a batch or a
 * shift sorts have a handful of entries, and are sorted so often that a general sort's own arrays would be what takes time.
 *
 * Example: `sortFew([3, 1, 2], (a, b) => a - b)` is [1, 2, 3].
 */
export const sortFew = <T>(list: T[], compare: (a: T, b: T) => number): T[] => {
  for (let i = 1; i < list.length; i++) {
    const one = list[i]!;
    let at = i;
    while (at > 0 && compare(list[at - 1]!, one) > 0) {
      list[at] = list[at - 1]!;
      at--;
    }
    list[at] = one;
  }
  return list;
};
