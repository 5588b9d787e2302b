export type { Fault } from '../../shared/fault.ts';
export type { FileEffect } from '../../src/usecases/read-in.ts';

import type { showFiles } from '../../src/usecases/show-files.ts';

export type FilesModel = Awaited<ReturnType<typeof showFiles>>;
