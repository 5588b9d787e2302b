import type { Context } from 'hono';
import type { KeptFile } from '../usecases/files/export-file.ts';

/** A file to be saved: a table by its name, else JSON. */
export const saveFile = (c: Context, { name, text }: KeptFile): Response => {
  const type = name.endsWith('.csv') ? 'text/csv' : 'application/json';
  return c.body(text, 200, {
    'Content-Type': `${type}; charset=utf-8`,
    'Content-Disposition': `attachment; filename="${name}"`,
  });
};
