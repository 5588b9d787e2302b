/** Why nothing can be written: no room on the disk, or a file or folder that may only be read. */
export type CannotWrite = 'full' | 'read-only';

/** Codes of SQLite and of the system (errno). */
const CODES: Readonly<Record<CannotWrite, RegExp>> = {
  full: /^(SQLITE_FULL|SQLITE_IOERR_SHM(SIZE|MAP)|ENOSPC|EDQUOT)/,
  'read-only': /^(SQLITE_READONLY|EROFS|EACCES|EPERM)/,
};

const ofCode = (code: string): CannotWrite | null =>
  CODES.full.test(code) ? 'full' : CODES['read-only'].test(code) ? 'read-only' : null;

/** Why nothing could be written, however deep the driver has wrapped that; null where an error is another one. */
export const cannotWrite = (error: unknown): CannotWrite | null => {
  for (let at = error; at instanceof Error; at = at.cause) {
    const why = ofCode('code' in at ? String(at.code) : '');
    if (why) return why;
  }
  return null;
};

/** The same in words, after "it cannot be written" or "it cannot be opened". */
export const CANNOT_WRITE_WORDS: Readonly<Record<CannotWrite, string>> = {
  full: 'there is no room left on the disk',
  'read-only': 'the file, or the folder that it is in, may only be read',
};
