import { workerData } from 'node:worker_threads';
import { backUpFile } from '../db/backup.ts';
import { openDatabase } from '../db/open.ts';
import { clearPhotos, copyPhotos, photosBeside } from '../db/photo-folder.ts';
import { isReplica } from '../db/replica/own-copy.ts';
import type { BackupData } from './nightly-backup.ts';
import { photosNamed } from './usecases/backup/photos-named.ts';
import { UNDO_DAYS } from './usecases/plan/record-change.ts';

const DAY_MS = 86_400_000;

const { path, to } = workerData as BackupData;
await backUpFile(path, to);
copyPhotos(photosBeside(path), photosBeside(to));

const clearUnnamed = async (): Promise<void> => {
  const database = await openDatabase({ url: `file:${path}` });
  try {
    // A day more than undoing reaches back: what was kept just now is not recorded yet.
    clearPhotos(path, await database.read(photosNamed), Date.now() - (UNDO_DAYS + 1) * DAY_MS);
  } finally {
    await database.close();
  }
};

// The backup is there, whole, whatever becomes of what nobody needs.
if (!isReplica(path))
  await clearUnnamed().catch((error: Error) =>
    console.error(`Photos that nothing names were not cleared away: ${error.message}`),
  );
