/**
 * A name as an id that none has yet. "new" is the address at which one is added.
 *
 * Example: `newId('Sand 0-2 mm', ['sand-0-2-mm'])` is 'sand-0-2-mm-2'.
 */
export const newId = (name: string, taken: readonly string[]): string => {
  const slug =
    name
      .toLowerCase()
      .normalize('NFKD')
      .replace(/[^a-z0-9]+/g, '-')
      .replace(/^-|-$/g, '') || 'one';
  for (let count = 1; ; count++) {
    const id = count === 1 ? slug : `${slug}-${count}`;
    if (id !== 'new' && !taken.includes(id)) return id;
  }
};
