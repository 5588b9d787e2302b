export type { Fault } from '../../shared/fault.ts';
export type { FileEffect } from '../../src/usecases/files/read-in.ts';

import type { showFiles } from '../../src/usecases/files/show-files.ts';

export type FilesModel = Awaited<ReturnType<typeof showFiles>>;
