/** Files that were looked at and not read in yet: so many bytes of them are held, the oldest go first. */
const MOST_BYTES = 30_000_000;
const MOST_FILES = 20;

export interface HeldFiles {
  /** Holds a file; the name it is held by. */
  hold(bytes: Uint8Array): string;
  /** The file, or null when it is held no longer. */
  get(name: string): Uint8Array | null;
  drop(name: string): void;
}

/** What is read in is what was looked at: the file is kept here in between, and gone when the program ends. */
export const heldFiles = (): HeldFiles => {
  const files = new Map<string, Uint8Array>();
  const bytesHeld = () => [...files.values()].reduce((sum, { length }) => sum + length, 0);
  return {
    hold: (bytes) => {
      const name = crypto.randomUUID();
      files.set(name, bytes);
      for (const oldest of files.keys()) {
        if (files.size <= MOST_FILES && bytesHeld() <= MOST_BYTES) break;
        files.delete(oldest);
      }
      return name;
    },
    get: (name) => files.get(name) ?? null,
    drop: (name) => void files.delete(name),
  };
};
