import type { Context } from 'hono';

/** A file comes with a little around it. */
export const AROUND_BYTES = 10_000;

/** The bytes of the file that was chosen in a field of a form; null where none was. */
export const uploadedFile = async (c: Context, field: string): Promise<Uint8Array<ArrayBuffer> | null> => {
  const form = await c.req.formData().catch(() => new FormData());
  const file = form.get(field);
  // Without a choice, browsers send a file without a name.
  if (!(file instanceof File) || (file.name === '' && file.size === 0)) return null;
  return new Uint8Array(await file.arrayBuffer());
};
