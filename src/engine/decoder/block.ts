type Owner = object;

const arraysOf = (owner: Owner): [string, Int32Array][] =>
  Object.entries(owner).filter((entry): entry is [string, Int32Array] => entry[1] instanceof Int32Array);

/**
 * Moves the arrays of some objects, all of them or those named, into one block, so that they are copied and compared
 * as one; the objects keep views of it under the same names: writing to either object's array writes to the block.
 *
 * Example: `Array.from(inBlock([{ a: Int32Array.of(1), b: Int32Array.of(2) }]))` is [1, 2].
 */
export const inBlock = (owners: readonly Owner[], names?: ReadonlySet<string>): Int32Array => {
  const found = owners.flatMap((owner) =>
    arraysOf(owner)
      .filter(([name]) => !names || names.has(name))
      .map(([name, array]) => ({ owner, name, array })),
  );
  const block = new Int32Array(found.reduce((n, { array }) => n + array.length, 0));
  let offset = 0;
  for (const { owner, name, array } of found) {
    block.set(array, offset);
    Object.assign(owner, { [name]: block.subarray(offset, offset + array.length) });
    offset += array.length;
  }
  return block;
};
