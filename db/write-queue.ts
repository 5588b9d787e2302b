/**
 * Runs one piece of work after another, in the order in which they were handed in. One that fails does not hold up the
 * next. A second write transaction of the same process would block the whole process for its busy timeout, so every
 * write goes through one queue.
 */
export const writeQueue = (): (<T>(work: () => Promise<T>) => Promise<T>) => {
  let last: Promise<unknown> = Promise.resolve();
  return (work) => {
    const next = last.then(work);
    last = next.catch(() => undefined);
    return next;
  };
};
