import { fileURLToPath } from 'node:url';

/** Where the file of a database lies; null for one behind an address. */
export const filePath = (url: string): string | null => {
  if (!url.startsWith('file:')) return null;
  return url.startsWith('file://') ? fileURLToPath(url) : url.slice('file:'.length);
};
