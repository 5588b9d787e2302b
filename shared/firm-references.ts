/** Something of a file before anything is known of its shape. */
export type Raw = Record<string, unknown>;
/** Where something stands in a file: `['moulds', 3, 'setFor']`. */
export type Path = (string | number)[];

/** What `referenceFaults` has at hand to look at a part of a file. */
export interface ReferenceCheck {
  fault(path: Path, message: string): void;
  /** Entries of a list that are objects, each with its path. */
  entries(holder: unknown, key: string, at?: Path): [Raw, Path][];
  /** Entries with an id, by it; an id given twice is a fault. */
  index(key: string, holder?: unknown, at?: Path): Map<string, Raw>;
  /** The entry that a field names; a fault where there is none. */
  refers(x: Raw, key: string, path: Path, map: Map<string, Raw>, kind: string): Raw | undefined;
  named: { mixes: Map<string, Raw>; castings: Map<string, Raw>; moulds: Map<string, Raw>; orders: Map<string, Raw> };
}

/** The mould and the casting that a pour or a set-up names. */
export const checkTurn = ({ refers, named }: ReferenceCheck, x: Raw, path: Path): void => {
  refers(x, 'mould', path, named.moulds, 'mould');
  refers(x, 'casting', path, named.castings, 'casting');
};

/** Batches and pours, of what is fixed or under way: what they name, and each other. The pours, by id. */
export const checkBatches = (check: ReferenceCheck, holder: Raw, at: Path): Map<string, Raw> => {
  const { fault, entries, index, refers, named } = check;
  const batches = index('batches', holder, at);
  const pours = index('pours', holder, at);
  for (const [x, path] of entries(holder, 'batches', at)) {
    refers(x, 'mix', path, named.mixes, 'mix');
    const names = Array.isArray(x.pours) ? x.pours : [];
    names.forEach((id, i) => {
      if (typeof id === 'string' && !pours.has(id)) fault([...path, 'pours', i], `no pour named "${id}"`);
    });
  }
  for (const [x, path] of entries(holder, 'pours', at)) {
    refers(x, 'batch', path, batches, 'batch');
    checkTurn(check, x, path);
    refers(x, 'order', path, named.orders, 'order');
  }
  return pours;
};

/**
 * Faults of what is fixed (`keep`): names that are not there. A mould that no longer makes the piece is none: the fixed
 * task is dropped, with that reason.
 */
export const keepFaults = (check: ReferenceCheck, keep: Raw, begun: unknown): void => {
  const { entries, refers, named } = check;
  const pours = checkBatches(check, keep, ['keep']);
  for (const [x] of entries(begun, 'pours')) if (typeof x.id === 'string') pours.set(x.id, x);
  for (const [x, path] of entries(keep, 'strips', ['keep'])) {
    refers(x, 'mould', path, named.moulds, 'mould');
    refers(x, 'pour', path, pours, 'pour');
  }
  for (const [x, path] of entries(keep, 'packs', ['keep'])) refers(x, 'order', path, named.orders, 'order');
  for (const [x, path] of entries(keep, 'preps', ['keep'])) checkTurn(check, x, path);
  for (const [x, path] of entries(keep, 'coats', ['keep'])) refers(x, 'mould', path, named.moulds, 'mould');
};
