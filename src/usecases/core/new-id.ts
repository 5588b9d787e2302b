/**
 * A name as an id that none has yet; `nameless` for one without a letter or digit of ours. "new" is the address at which
 * one is added.
 *
 * Example: `newId('Sand 0-2 mm', new Set(['sand-0-2-mm']))` is 'sand-0-2-mm-2'.
 */
export const newId = (name: string, taken: Pick<ReadonlySet<string>, 'has'>, nameless = 'one'): string => {
  const slug =
    name
      .toLowerCase()
      .normalize('NFKD')
      .replace(/[^a-z0-9]+/g, '-')
      .replace(/^-|-$/g, '') || nameless;
  for (let count = 1; ; count++) {
    const id = count === 1 ? slug : `${slug}-${count}`;
    if (id !== 'new' && !taken.has(id)) return id;
  }
};
