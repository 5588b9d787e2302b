import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** One source file: its path from the project folder, with "/" between folders, and its text. */
export interface SourceText {
  path: string;
  text: string;
}

const project = fileURLToPath(new URL('../../', import.meta.url));

/** All TypeScript files of a folder of the project and of the folders in it. */
export const filesUnder = (folder: string): SourceText[] =>
  readdirSync(project + folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.tsx?$/.test(name))
    .map((name) => ({ path: `${folder}/${name}`, text: readFileSync(`${project}${folder}/${name}`, 'utf8') }));
