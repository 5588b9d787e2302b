/**
 * Runs so many pieces of work at once, and the others in the order in which they came, each as soon as one has ended. None
 * may wait for another that came later.
 */
export const readPlaces = (places: number): (<T>(work: () => Promise<T>) => Promise<T>) => {
  const waiting: (() => void)[] = [];
  let free = places;
  const leave = () => {
    const next = waiting.shift();
    if (next) next();
    else free += 1;
  };
  return async (work) => {
    if (free > 0) free -= 1;
    else await new Promise<void>((resolve) => waiting.push(resolve));
    try {
      return await work();
    } finally {
      leave();
    }
  };
};
