import { exportArchive } from '../../src/usecases/files/export-file.ts';
import { loadFile, readUpload } from '../../src/usecases/files/load-file.ts';
import { doneOf } from './outcomes.ts';
import { yardContext } from './yard-context.ts';

type Context = Awaited<ReturnType<typeof yardContext>>;

/** Another yard into which the archive of one was read, with the archives of both. */
export const archived = async (context: Context): Promise<{ other: Context; text: string; again: string }> => {
  const { text } = await exportArchive(context);
  const other = await yardContext();
  const read = readUpload(new TextEncoder().encode(text), other.now);
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  doneOf(await loadFile(other, read.value));
  return { other, text, again: (await exportArchive(other)).text };
};
