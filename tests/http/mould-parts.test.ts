import { describe, expect, test } from 'vitest';
import { demoScreens, type TestScreens, textOf } from '../support/screens.ts';

const MOULD = '1200 no. 2';
const PATH = `/moulds/${encodeURIComponent(MOULD)}/part?from=mould`;
const pageOf = async ({ get }: TestScreens, more = ''): Promise<string> =>
  textOf(await get(`/mould/${encodeURIComponent(MOULD)}${more}`));
const changeOf = (answer: Response): string =>
  new URL(answer.headers.get('Location')!, 'http://x').searchParams.get('done')!;
const breakEnds = (screens: TestScreens) =>
  screens.post(PATH, { part: 'ends', condition: 'broken', partNote: 'split at the sleeve', partRepairedOn: '' });

describe('the parts of a mould', () => {
  test('are whole until somebody says otherwise', async () => {
    const text = await pageOf(await demoScreens());
    for (const part of ['Base', 'Ends', 'Sides', 'Sleeve plugs']) expect(text).toMatch(new RegExp(`${part} whole`));
  });

  test('broken block the mould with dates moved, mended they free it, and undone it is as before', async () => {
    const screens = await demoScreens();
    const answer = await breakEnds(screens);
    const told = await screens.textAfter(answer);
    expect(told).toContain(`${MOULD}: ends broken.`);
    expect(told).toContain(`${MOULD}: damaged`);
    expect(told).toContain('Ends broken: split at the sleeve.');
    expect(told).toContain('Out of use until it is mended.');
    expect(told).toContain('Nothing is planned in it.');
    await screens.post('/undo', { change: changeOf(answer), back: '/moulds' });
    expect(await pageOf(screens)).toMatch(/Ends whole/);
    expect(await pageOf(screens)).not.toContain(`${MOULD}: damaged`);
    await breakEnds(screens);
    const mended = await screens.post(PATH, { part: 'ends', condition: 'whole' });
    expect(await screens.textAfter(mended)).not.toContain(`${MOULD}: damaged`);
    const history = await pageOf(screens);
    expect(history).toContain('Ends broken: split at the sleeve');
    expect(history).toContain('Ends whole');
  });

  test('are whole again once the mould is marked mended as a whole', async () => {
    const screens = await demoScreens();
    await breakEnds(screens);
    await screens.post(`/moulds/${encodeURIComponent(MOULD)}/mended?from=mould`, {});
    expect(await pageOf(screens)).toMatch(/Ends whole/);
  });

  test('worn are a note on the map of moulds', async () => {
    const screens = await demoScreens();
    await screens.post(PATH, { part: 'other', otherPart: 'Top rail', condition: 'worn', partNote: 'bent' });
    expect(await pageOf(screens)).toContain('Top rail worn: bent Mended');
    expect(await textOf(await screens.get('/moulds'))).toContain('Top rail worn: bent.');
  });

  test('say whose days they hold up, by a plan that nothing comes of', async () => {
    const screens = await demoScreens();
    await breakEnds(screens);
    const before = await pageOf(screens);
    const asked = await pageOf(screens, '?blocks');
    expect(asked).toMatch(/Were it mended today|No order would be ready on another day/);
    expect(await pageOf(screens)).toBe(before);
  });

  test('are asked which and how, with all that was typed kept', async () => {
    const screens = await demoScreens();
    const refused = await screens.post(PATH, { part: 'other', otherPart: '', partNote: 'a long story' });
    expect(refused.status).toBe(422);
    const html = await refused.text();
    expect(html).toContain('What is it called?');
    expect(html).toContain('Say how it is.');
    expect(html).toContain('value="a long story"');
  });
});

test('parts go with the archive and come back with it, and one that contradicts its mould is a fault', async () => {
  const screens = await demoScreens();
  await breakEnds(screens);
  const archive = JSON.parse(await (await screens.get('/yard/files/archive.json')).text());
  const mould = archive.moulds.find(({ id }: { id: string }) => id === MOULD);
  expect(mould.parts).toEqual([{ part: 'ends', condition: 'broken', note: 'split at the sleeve', tookOut: true }]);
  const look = async (file: object, into: TestScreens) => {
    const form = new FormData();
    form.set('file', new File([JSON.stringify(file)], 'yard.archive.json'));
    return (await into.app.request('/yard/files/look', { method: 'POST', body: form })).text();
  };
  const other = await demoScreens();
  const html = await look(archive, other);
  const field = (name: string) => new RegExp(`name="${name}" value="([^"]+)"`).exec(html)![1]!;
  await other.post('/yard/files/read-in', { file: field('file'), revision: field('revision') });
  expect(await pageOf(other)).toContain('Ends broken: split at the sleeve Mended');
  mould.condition = 'ready';
  expect(await look(archive, other)).toContain('no part of a mould that is in use is broken');
});
