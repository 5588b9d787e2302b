/** Which moulds a step is about, and when it begins. */
interface Placed {
  moulds: readonly string[];
  at: string;
}

/**
 * Of steps in order of time those that come before one of them in its moulds, and before those in theirs: a batch is
 * poured into all its moulds at once. `placed` says where and when a step is.
 *
 * Example: before mixing for a at 11:45 come its strip of 11:20, and the batch of 8:35 that filled a and b; before that what
 * sets up b.
 */
export const stepsBefore = <S>(steps: readonly S[], step: S, placed: (step: S) => Placed): S[] => {
  const { moulds, at } = placed(step);
  const wanted = new Set(moulds);
  const before: S[] = [];
  for (const one of [...steps].reverse()) {
    const its = placed(one);
    if (one === step || Date.parse(its.at) >= Date.parse(at) || !its.moulds.some((mould) => wanted.has(mould)))
      continue;
    for (const mould of its.moulds) wanted.add(mould);
    before.unshift(one);
  }
  return before;
};
