import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { type PhotoFolder, photoFolder } from '../../db/photo-folder.ts';
import { pruneCaptured } from '../../db/stores/change-store.ts';
import { workRecords } from '../../db/stores/work-record-store.ts';
import { minuteOf } from '../../shared/time.ts';
import { photosNamed } from '../../src/usecases/backup/photos-named.ts';
import { piecePath } from '../../views/trace/piece-path.ts';
import { behindDoor, OWNER } from '../support/behind-door.ts';
import { screensOn, type TestScreens, textOf } from '../support/screens.ts';
import { smallYard } from '../support/small-yard.ts';
import { temporaryFolder } from '../support/temporary-folder.ts';
import { yardContext } from '../support/yard-context.ts';

const FILLED = '2027-04-08T08:00:00+01:00';
const MOULD = '900 no. 1';
const PIECE = piecePath({ minute: minuteOf(FILLED), mould: MOULD });
const yardWithPiece = () => smallYard({ inMould: [{ mould: MOULD, casting: 'panel-900', filledAt: FILLED }] });

const JPEG = new Uint8Array([0xff, 0xd8, 0xff, 0xe0, 1, 2, 3]);
const photos = (): PhotoFolder => photoFolder(join(temporaryFolder(), 'photos'));

const screensWith = async (folder?: PhotoFolder): Promise<TestScreens> => {
  const { database, now } = await yardContext(yardWithPiece());
  return screensOn(database, now, { photos: folder });
};

const send = (
  { app }: Pick<TestScreens, 'app'>,
  bytes: Uint8Array<ArrayBuffer>,
  headers = {},
  path = PIECE,
  texts = {},
) => {
  const form = new FormData();
  for (const [name, text] of Object.entries(texts)) form.set(name, String(text));
  form.set('photo', new File([bytes], 'IMG_1.jpg', { type: 'image/jpeg' }));
  return app.request(`${path}/photo`, { method: 'POST', body: form, headers });
};

const photoIn = async (answer: Response): Promise<string | undefined> =>
  /src="(\/photo\/[0-9a-f]{64})"/.exec(await answer.text())?.[1];

const changeOf = (answer: Response): string =>
  new URL(answer.headers.get('Location')!, 'http://x').searchParams.get('done')!;

describe('a photo of a piece', () => {
  test('is kept, shown as what it is, taken off, and back by undoing', async () => {
    const screens = await screensWith(photos());
    const kept = await send(screens, JPEG);
    expect(await screens.textAfter(kept)).toContain(`Photo kept of a piece from ${MOULD}.`);
    const path = (await photoIn(await screens.get(PIECE)))!;
    const shown = await screens.get(path);
    expect(new Uint8Array(await shown.arrayBuffer())).toEqual(JPEG);
    expect(shown.headers.get('Content-Type')).toBe('image/jpeg');
    expect(shown.headers.get('X-Content-Type-Options')).toBe('nosniff');
    expect(shown.headers.get('Cache-Control')).toContain('private');
    const gone = await screens.post(`${PIECE}/photo-removed`, { photo: path.slice('/photo/'.length) });
    expect(await screens.textAfter(gone)).toContain('There is none yet.');
    await screens.post('/undo', { change: changeOf(gone), back: PIECE });
    expect(await photoIn(await screens.get(PIECE))).toBe(path);
    await screens.post('/undo', { change: changeOf(kept), back: PIECE });
    expect(await textOf(await screens.get(PIECE))).toContain('There is none yet.');
    // Its file stays for as long as undoing can bring it back.
    const named = async () => [...(await screens.database.read(photosNamed))];
    expect(await named()).toEqual([path.slice('/photo/'.length)]);
    await screens.database.write((tx) => pruneCaptured(tx, '2030-01-01T00:00:00Z', 0));
    expect(await named()).toEqual([]);
  });

  test('sent again by the same act it is kept once, at the time it was taken', async () => {
    const { database, now } = await yardContext(yardWithPiece());
    const screens = screensOn(database, now, { photos: photos() });
    const takenAt = '2027-04-08T07:30:00Z';
    const texts = { act: '5f3f9a52-9f0b-4c39-9d3e-0f6a4c1d2b3e', takenAt, doneBy: 'Ann' };
    const [first, again] = [await send(screens, JPEG, {}, PIECE, texts), await send(screens, JPEG, {}, PIECE, texts)];
    expect(changeOf(again)).toBe(changeOf(first));
    const records = await database.read((tx) => workRecords(tx));
    expect(records.filter(({ kind }) => kind === 'photo')).toMatchObject([{ at: takenAt }]);
  });

  test('moves no plan, and goes with the archive by its name', async () => {
    const screens = await screensWith(photos());
    const before = await textOf(await screens.get('/turns'));
    await send(screens, JPEG);
    expect(await textOf(await screens.get('/turns'))).toBe(before);
    const archive = JSON.parse(await (await screens.get('/yard/files/archive.json')).text());
    expect(archive.workDone).toEqual([expect.objectContaining({ kind: 'photo', mould: MOULD, type: 'image/jpeg' })]);
  });

  test.each([
    [
      'no picture, whatever it is called',
      new TextEncoder().encode('<svg onload="alert(1)"/>'),
      422,
      'That is no picture',
    ],
    ['nothing at all', new Uint8Array(0), 422, 'That is no picture'],
    ['larger than 10 MB', new Uint8Array(10_020_001), 413, 'The photo is larger than 10 MB'],
    [
      'a little larger than 10 MB',
      Uint8Array.from({ length: 10_000_001 }, (_, at) => JPEG[at] ?? 0),
      422,
      'larger than 10 MB',
    ],
  ])('%s is refused in words', async (_what, bytes, status, words) => {
    const screens = await screensWith(photos());
    const answer = await send(screens, bytes);
    expect(answer.status).toBe(status);
    expect(await textOf(answer)).toContain(words);
    expect(await textOf(await screens.get(PIECE))).toContain('There is none yet.');
  });

  test('the very same is kept once, and no more than a dozen are', async () => {
    const screens = await screensWith(photos());
    const numbered = (number: number) => new Uint8Array([...JPEG, number]);
    for (let number = 0; number < 12; number += 1) expect((await send(screens, numbered(number))).status).toBe(303);
    expect(await textOf(await send(screens, numbered(3)))).toContain('That very photo is kept already.');
    expect(await textOf(await send(screens, numbered(12)))).toContain('12 photos of a piece are the most.');
  });

  test('without a choice says so, and where no folder is says why there are none', async () => {
    const screens = await screensWith(photos());
    const none = await screens.app.request(`${PIECE}/photo`, { method: 'POST', body: new FormData() });
    expect(await textOf(none)).toContain('No photo was chosen.');
    const elsewhere = await screensWith();
    expect(await textOf(await elsewhere.get(PIECE))).toContain('this one is no file of the machine');
    expect((await send(elsewhere, JPEG)).status).toBe(422);
  });

  test('of a piece that never was, and one nobody has, are not found', async () => {
    const screens = await screensWith(photos());
    expect((await screens.get('/piece/1/none')).status).toBe(404);
    expect((await send(screens, JPEG, {}, '/piece/1/none')).status).toBe(404);
    for (const name of ['f'.repeat(64), '..%2Fyard.db', 'x'])
      expect((await screens.get(`/photo/${name}`)).status).toBe(404);
  });
});

test('photos are for who has signed in, and are not taken from anybody else', async () => {
  const { database, now } = await yardContext(yardWithPiece());
  const folder = photos();
  const screens = await behindDoor(database, { now }, {}, folder);
  const cookie = await screens.signedIn(OWNER);
  expect((await send(screens, JPEG)).status).toBe(401);
  expect((await send(screens, JPEG, cookie)).status).toBe(303);
  const path = (await photoIn(await screens.get(PIECE, cookie)))!;
  expect((await screens.get(path)).status).toBe(401);
  expect((await screens.get(PIECE)).status).toBe(401);
  expect((await screens.get(path, cookie)).status).toBe(200);
});

test('a piece is led to from its mould once it came out', async () => {
  const screens = await screensWith(photos());
  await screens.post('/today/stripped', { mould: MOULD, cameOut: 'mend', reason: 'a corner', sure: 'early' });
  const html = await (await screens.get(`/mould/${encodeURIComponent(MOULD)}`)).text();
  expect(html).toContain(`<a href="${PIECE}">Panel 900 stripped, to be mended: a corner</a>`);
});
