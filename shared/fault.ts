/**
 * One thing wrong with a file: where, as a JSON path (`moulds[3].setFor`), and what, in plain words. `message` goes on
 * after the path: "no casting named ...", "is missing".
 */
export interface Fault {
  path: string;
  message: string;
}

/**
 * A path as people read it; the whole file is written `file`.
 *
 * Example: `pathText(['moulds', 3, 'setFor'])` is "moulds[3].setFor", and `pathText([])` is "file".
 */
export const pathText = (path: readonly PropertyKey[]): string =>
  path.reduce<string>((text, key) => {
    if (typeof key === 'number') return `${text}[${key}]`;
    return text ? `${text}.${String(key)}` : String(key);
  }, '') || 'file';

/**
 * A fault in one line, as the command line prints it.
 *
 * Example: `faultText({ path: 'yard.now', message: 'is missing' })` is "yard.now: is missing".
 */
export const faultText = (fault: Fault): string => `${fault.path}: ${fault.message}`;
