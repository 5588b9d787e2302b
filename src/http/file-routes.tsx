import type { Context, MiddlewareHandler } from 'hono';
import { Hono } from 'hono';
import { bodyLimit } from 'hono/body-limit';
import type { Fault } from '../../shared/fault.ts';
import { FILES, FilesPage } from '../../views/files/files-page.tsx';
import { PreviewPage } from '../../views/files/preview-page.tsx';
import { PlainPage } from '../../views/plain/plain-page.tsx';
import type { Outcome, UseCaseContext } from '../usecases/core/context.ts';
import { TABLE_KINDS } from '../usecases/files/csv-columns.ts';
import { exportArchive, exportYard } from '../usecases/files/export-file.ts';
import { exportTable, type NumberSign, tableTemplate } from '../usecases/files/export-table.ts';
import {
  type FileEffect,
  loadFile,
  NOT_CHECKED,
  readUpload,
  tryFile,
  YARD_CHANGED,
} from '../usecases/files/load-file.ts';
import { showFiles } from '../usecases/files/show-files.ts';
import { wholeTyped } from '../usecases/typed/form-fields.ts';
import { readForm } from './form.ts';
import { type HeldFiles, heldFiles } from './held-files.ts';
import { doneNotice } from './notice.ts';
import { page, seeDone } from './page.tsx';
import { saveFile } from './save-file.ts';
import type { Screens } from './screens.ts';
import { doneBy } from './this-device.ts';
import { AROUND_BYTES, uploadedFile } from './uploaded-file.ts';

const MEGABYTE = 1_000_000;
const LARGEST_FILE_MEGABYTES = 10;

const tooLarge = (c: Context) =>
  page(
    c,
    { title: 'Too large', at: 'yard' },
    <PlainPage
      happened={`The file is larger than ${LARGEST_FILE_MEGABYTES} MB, so it was not taken.`}
      back={FILES}
      backName="Files in and out"
    >
      Nothing was loaded, and nothing was changed. Choose a smaller file, or split it into several.
    </PlainPage>,
    { status: 413 },
  );

/** The routes that take files, with the larger limit that these have. */
export const isFilePath = (path: string): boolean => path === `${FILES}/look`;

export const fileLimit: MiddlewareHandler = bodyLimit({
  maxSize: LARGEST_FILE_MEGABYTES * MEGABYTE + AROUND_BYTES,
  onError: tooLarge,
});

const signOf = (c: Context): NumberSign => (c.req.query('numbers') === 'commas' ? 'commas' : 'points');

const filesPage = async (c: Context, context: UseCaseContext, faults: readonly Fault[]) => {
  const model = await showFiles(context);
  const content = (
    <FilesPage model={model} notice={await doneNotice(c, context)} faults={faults} commas={signOf(c) === 'commas'} />
  );
  const status = faults.length > 0 ? 422 : 200;
  return page(c, { title: 'Files in and out', at: 'yard', yardName: model.yardName }, content, { status });
};

interface Preview {
  effect: FileEffect;
  file: string;
  happened: string | null;
}

/** Nothing is loaded yet: the page is still that of the yard as it is. */
const previewPage = async (c: Context, context: UseCaseContext, preview: Preview) => {
  const { yardName } = await showFiles(context);
  const frame = { title: 'What reading it in would change', at: 'yard', yardName } as const;
  return page(c, frame, <PreviewPage {...preview} />, { status: preview.happened === null ? 200 : 409 });
};

const tried = async (context: UseCaseContext, bytes: Uint8Array): Promise<Outcome<FileEffect>> => {
  const file = readUpload(bytes, context.now);
  return file.ok ? tryFile(context, file.value) : file;
};

const NO_FILE = { path: 'file', message: 'No file was chosen. Choose one, then check it.' };

const look = async (c: Context, context: UseCaseContext, held: HeldFiles) => {
  const bytes = await uploadedFile(c, 'file');
  if (!bytes) return filesPage(c, context, [NO_FILE]);
  const effect = await tried(context, bytes);
  if (!effect.ok) return filesPage(c, context, effect.faults);
  return previewPage(c, context, { effect: effect.value, file: held.hold(bytes), happened: null });
};

const gone = (c: Context) =>
  page(
    c,
    { title: 'Held no longer', at: 'yard' },
    <PlainPage happened="That file is held here no longer." back={FILES} backName="Files in and out">
      Nothing was loaded. Choose the file once more, and look at what it would change.
    </PlainPage>,
    { status: 409 },
  );

const readIn = async (c: Context, context: UseCaseContext, held: HeldFiles) => {
  const { file: name = '', revision, checked } = await readForm(c);
  const bytes = held.get(name);
  const seen = wholeTyped(revision);
  if (!bytes || seen === null) return gone(c);
  const file = readUpload(bytes, context.now);
  const outcome = file.ok ? await loadFile(context, file.value, seen, checked === 'yes') : file;
  if (outcome.ok) {
    held.drop(name);
    return seeDone(c, FILES, outcome.value.change);
  }
  const stopped = outcome.faults.find(({ path }) => path === YARD_CHANGED || path === NOT_CHECKED);
  const again = stopped ? await tried(context, bytes) : outcome;
  if (!again.ok) return filesPage(c, context, again.faults);
  const happened =
    stopped?.path === YARD_CHANGED ? `${stopped.message} This is what it would change now.` : (stopped?.message ?? '');
  return previewPage(c, context, { effect: again.value, file: name, happened });
};

export const fileRoutes = ({ context }: Screens): Hono => {
  const routes = new Hono();
  const held = heldFiles();
  routes.get(FILES, (c) => filesPage(c, context(), []));
  routes.get(`${FILES}/yard.json`, async (c) => saveFile(c, await exportYard(context())));
  routes.get(`${FILES}/archive.json`, async (c) => saveFile(c, await exportArchive(context())));
  for (const kind of TABLE_KINDS) {
    routes.get(`${FILES}/${kind}.csv`, async (c) => saveFile(c, await exportTable(context(), kind, signOf(c))));
    routes.get(`${FILES}/${kind}-template.csv`, async (c) =>
      saveFile(c, await tableTemplate(context(), kind, signOf(c))),
    );
  }
  routes.post(`${FILES}/look`, (c) => look(c, context(), held));
  routes.post(`${FILES}/read-in`, (c) => readIn(c, { ...context(), ...doneBy(c) }, held));
  return routes;
};
