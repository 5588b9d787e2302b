/** A file as it is written: the same data always gives the same bytes. */
export const fileText = (file: unknown): string => `${JSON.stringify(file, null, 2)}\n`;
