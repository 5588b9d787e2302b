import { describe, expect, test } from 'vitest';
import { screensOver, type TestScreens } from '../support/screens.ts';
import { smallYard } from '../support/small-yard.ts';

/** The values of the fields of a form, as a page has them, by its address. */
const fieldsOf = (html: string, action: string, naming: string): Record<string, string> => {
  const forms = html.split('<form').filter((form) => form.includes(`action="${action}"`));
  const form = forms.find((one) => one.includes(naming))?.split('</form>')[0] ?? '';
  return Object.fromEntries(
    [...form.matchAll(/<input[^>]*>/g)].map(([input]) => {
      const of = (name: string) => new RegExp(` ${name}="([^"]*)"`).exec(input)?.[1] ?? '';
      return [of('name'), of('value')];
    }),
  );
};

const pageOf = async ({ get }: TestScreens, path: string): Promise<string> => (await get(path)).text();

describe('two people who count one material', () => {
  const form = async (screens: TestScreens) =>
    fieldsOf(await pageOf(screens, '/buying'), '/buying/counted', 'value="mortar"');

  test('the second sees what the first counted, and is asked to send it again', async () => {
    const screens = await screensOver();
    const [one, two] = [await form(screens), await form(screens)];
    expect((await screens.post('/buying/counted', { ...one, counted: '17' })).status).toBe(303);
    const answer = await screens.post('/buying/counted', { ...two, counted: '16' });
    expect(answer.status).toBe(422);
    const html = await answer.text();
    expect(html).toContain('The stock book was changed meanwhile. It is 17 now.');
    const again = fieldsOf(html, '/buying/counted', 'value="mortar"');
    expect(again.counted).toBe('16');
    expect((await screens.post('/buying/counted', again)).status).toBe(303);
    expect((await form(screens)).bookWas).toBe('16');
  });

  test('nothing is said where both counted the same', async () => {
    const screens = await screensOver();
    const [one, two] = [await form(screens), await form(screens)];
    expect((await screens.post('/buying/counted', { ...one, counted: '17' })).status).toBe(303);
    expect(await (await screens.post('/buying/counted', { ...two, counted: '17' })).text()).toContain(
      'says so already',
    );
  });

  test('offcuts that only the first counted are taken over', async () => {
    const screens = await screensOver();
    const rods = async () => fieldsOf(await pageOf(screens, '/buying'), '/buying/counted', 'value="rod"');
    const [one, two] = [await rods(), await rods()];
    expect((await screens.post('/buying/counted', { ...one, offcuts: '900 mm' })).status).toBe(303);
    const html = await (await screens.post('/buying/counted', { ...two, counted: '2' })).text();
    const again = fieldsOf(html, '/buying/counted', 'value="rod"');
    expect([again.counted, again.offcuts]).toEqual(['2', '900 mm']);
    expect((await screens.post('/buying/counted', again)).status).toBe(303);
    expect((await rods()).bookWas).toBe('2 1x900');
  });
});

describe('two people who say what is wrong with one mould', () => {
  const PATH = '/moulds/900%20no.%201/damaged';
  const form = async (screens: TestScreens) => fieldsOf(await pageOf(screens, '/moulds'), PATH, 'name="note"');
  const damaged = () => {
    const [first, ...others] = smallYard().moulds;
    return screensOver(smallYard({ moulds: [{ ...first!, condition: 'damaged' as const }, ...others] }));
  };

  test('the second sees the note of the first, and keeps its own', async () => {
    const screens = await damaged();
    const [one, two] = [await form(screens), await form(screens)];
    expect((await screens.post(PATH, { ...one, note: 'Split' })).status).toBe(303);
    const answer = await screens.post(PATH, { ...two, note: 'Corner off' });
    expect(answer.status).toBe(422);
    const html = await answer.text();
    expect(html).toMatch(/It was changed to (&quot;|")Split(&quot;|") meanwhile\. What you typed still stands here/);
    const again = fieldsOf(html, PATH, 'name="note"');
    expect(again.note).toBe('Corner off');
    expect((await screens.post(PATH, again)).status).toBe(303);
    expect((await form(screens)).note).toBe('Corner off');
  });

  test('what only the first changed stands in the form of the second', async () => {
    const screens = await damaged();
    const [one, two] = [await form(screens), await form(screens)];
    expect((await screens.post(PATH, { ...one, note: 'Split' })).status).toBe(303);
    const html = await (await screens.post(PATH, { ...two, repairedOn: 'Sat 17 Apr 2027' })).text();
    expect(html).toMatch(/meanwhile, which stands here now/);
    const again = fieldsOf(html, PATH, 'name="note"');
    expect([again.note, again.repairedOn]).toEqual(['Split', 'Sat 17 Apr 2027']);
    expect((await screens.post(PATH, again)).status).toBe(303);
    expect(await form(screens)).toMatchObject({ note: 'Split', repairedOnWas: '2027-04-17' });
  });

  test('one that is mended meanwhile is not damaged again without a word', async () => {
    const screens = await damaged();
    const two = await form(screens);
    expect((await screens.post('/moulds/900%20no.%201/mended', {})).status).toBe(303);
    const answer = await screens.post(PATH, { ...two, note: 'Split' });
    expect(await answer.text()).toContain('900 no. 1 is in use again since this was shown.');
  });
});
