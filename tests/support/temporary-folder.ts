import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';

/** A folder that is gone when the test is over. */
export const temporaryFolder = (): string => {
  const folder = mkdtempSync(join(tmpdir(), 'yard-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
};
