import { workerData } from 'node:worker_threads';
import { backUpFile } from '../db/backup.ts';
import { copyPhotos, photosBeside } from '../db/photo-folder.ts';
import type { BackupData } from './nightly-backup.ts';

const { path, to } = workerData as BackupData;
await backUpFile(path, to);
copyPhotos(photosBeside(path), photosBeside(to));
