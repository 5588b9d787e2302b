export type { Fault } from '../../shared/fault.ts';
export type { FileEffect } from '../../src/usecases/files/load-file.ts';
export type { FilesModel, TableOffered } from '../../src/usecases/files/show-files.ts';
