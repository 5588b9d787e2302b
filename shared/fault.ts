/** One thing wrong with a file: where, as a JSON path (`moulds[3].setFor`), and what, in plain words. */
export interface Fault {
  path: string;
  message: string;
}

/** `['moulds', 3, 'setFor']` is written `moulds[3].setFor`; the whole file is written `file`. */
export const pathText = (path: readonly PropertyKey[]): string =>
  path.reduce<string>((text, key) => {
    if (typeof key === 'number') return `${text}[${key}]`;
    return text ? `${text}.${String(key)}` : String(key);
  }, '') || 'file';

export const faultText = (fault: Fault): string => `${fault.path}: ${fault.message}`;
