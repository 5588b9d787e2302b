/** How often others are let in while something is done. */
export const yieldsDuring = async (work: () => Promise<unknown>): Promise<number> => {
  let yields = 0;
  let on = true;
  const count = () => {
    yields += 1;
    if (on) setImmediate(count);
  };
  setImmediate(count);
  await work();
  on = false;
  return yields;
};
