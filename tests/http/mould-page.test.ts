import { describe, expect, test } from 'vitest';
import { demoScreens, type TestScreens, textOf } from '../support/screens.ts';
import { sentAsShown } from '../support/sent-as-shown.ts';

const pageOf = async ({ get }: TestScreens, mould: string): Promise<string> =>
  textOf(await get(`/mould/${encodeURIComponent(mould)}`));

/** A mould of the demo that has a piece in it, by its page. */
const fullMould = async (screens: TestScreens): Promise<string> => {
  const html = await (await screens.get('/moulds?which=full')).text();
  return decodeURIComponent(/href="\/mould\/([^"]+)"/.exec(html)![1]!);
};

const strip = (screens: TestScreens, mould: string) =>
  screens.post('/today/stripped', { mould, cameOut: 'scrap', reason: 'blowholes', sure: 'early' });

describe('the page of a mould', () => {
  test('says what was recorded of it, until that is undone', async () => {
    const screens = await demoScreens();
    const mould = await fullMould(screens);
    expect(await pageOf(screens, mould)).toContain('Nothing of it was recorded yet.');
    const answer = await strip(screens, mould);
    const change = new URL(answer.headers.get('Location')!, 'http://x').searchParams.get('done')!;
    const after = await pageOf(screens, mould);
    expect(after).toContain('1 piece came out of it. 1 of 1 scrapped.');
    expect(after).toContain('stripped, scrapped: blowholes');
    await screens.post('/undo', { change, back: '/moulds' });
    expect(await pageOf(screens, mould)).toContain('Nothing of it was recorded yet.');
  });

  test('takes what is said of the mould, and comes back', async () => {
    const screens = await demoScreens();
    const path = '/moulds/1200%20no.%203/damaged?from=mould';
    const answer = await screens.post(path, { note: 'a split end', repairedOn: '', cameOut: 'good' });
    expect(answer.headers.get('Location')).toMatch(/^\/mould\/1200%20no\.%203\?done=/);
    const text = await screens.textAfter(answer);
    expect(text).toContain('1200 no. 3: damaged');
    expect(text).toContain('Damaged: a split end');
  });

  test('is where a fault of its forms is told', async () => {
    const screens = await demoScreens();
    const refused = await screens.post('/moulds/1200%20no.%203/damaged?from=mould', { repairedOn: '1 Apr 2027' });
    expect(refused.status).toBe(422);
    const text = await textOf(refused);
    expect(text).toContain('That day has passed.');
    expect(text).toContain('What it has been through');
  });

  test('is not there for a mould that is not there', async () => {
    expect((await (await demoScreens()).get('/mould/none')).status).toBe(404);
  });
});

test('what was done goes with the archive, and comes back with it', async () => {
  const screens = await demoScreens();
  const mould = await fullMould(screens);
  await strip(screens, mould);
  const archive = await (await screens.get('/yard/files/archive.json')).text();
  expect(JSON.parse(archive).workDone).toEqual([
    expect.objectContaining({ kind: 'stripped', mould, cameOut: 'scrap', reason: 'blowholes' }),
  ]);
  const other = await demoScreens();
  const form = new FormData();
  form.set('file', new File([archive], 'yard.archive.json'));
  const look = await (await other.app.request('/yard/files/look', { method: 'POST', body: form })).text();
  const field = (name: string) => new RegExp(`name="${name}" value="([^"]+)"`).exec(look)![1]!;
  await other.post('/yard/files/read-in', { file: field('file'), revision: field('revision') });
  expect(await pageOf(other, mould)).toContain('stripped, scrapped: blowholes');
});

test('each mould in use has a label that leads to its page', async () => {
  const screens = await demoScreens();
  const html = await (await screens.get('/moulds/labels')).text();
  const moulds = [...(await (await screens.get('/moulds')).text()).matchAll(/href="\/mould\//g)].length;
  expect(html.match(/<li class="label">/g)).toHaveLength(moulds);
});

test('a mould is to be looked over after so many turns, and says when that is due', async () => {
  const screens = await demoScreens();
  const mould = await fullMould(screens);
  const form = `/yard/moulds/${encodeURIComponent(mould)}`;
  const html = await (await screens.get(form)).text();
  await screens.post(form, { ...sentAsShown(html), serviceEveryTurns: '1' });
  expect(await pageOf(screens, mould)).toContain('To be looked over after 1 more turn.');
  await strip(screens, mould);
  expect(await pageOf(screens, mould)).toContain('Due to be looked over.');
  const archive = JSON.parse(await (await screens.get('/yard/files/archive.json')).text());
  expect(archive.moulds.find(({ id }: { id: string }) => id === mould).serviceEveryTurns).toBe(1);
  await screens.post(`/moulds/${encodeURIComponent(mould)}/serviced?from=mould`, {});
  const after = await pageOf(screens, mould);
  expect(after).toContain('To be looked over after 1 more turn.');
  expect(after).toContain('Looked over');
});

test('who marked a mould stands in its history, by the name chosen on the device', async () => {
  const screens = await demoScreens();
  const mould = await fullMould(screens);
  await screens.app.request(`/moulds/${encodeURIComponent(mould)}/damaged`, {
    ...{ method: 'POST', headers: { Cookie: 'who-is-here=Anna' } },
    body: new URLSearchParams({ note: 'split', cameOut: 'good' }),
  });
  expect(await pageOf(screens, mould)).toContain('Anna: Damaged: split');
});
