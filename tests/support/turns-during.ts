/** How often others have their turn while something is done. */
export const turnsDuring = async (work: () => Promise<unknown>): Promise<number> => {
  let turns = 0;
  let on = true;
  const count = () => {
    turns += 1;
    if (on) setImmediate(count);
  };
  setImmediate(count);
  await work();
  on = false;
  return turns;
};
