import { describe, expect, test } from 'vitest';
import { loadYardFile } from '../../db/stores/yard-store.ts';
import { DEMO_NOW, demoScreens, screensOver, type TestScreens } from '../support/screens.ts';
import { sentAsShown } from '../support/sent-as-shown.ts';
import { smallYard } from '../support/small-yard.ts';

const everyLink = async ({ get }: TestScreens, path: string): Promise<string[]> => {
  const html = await (await get(path)).text();
  const links = [...html.matchAll(/href="(\/yard\/[^"#?]+)"/g)].map(([, href]) => href ?? '');
  return [...new Set(links)].filter((href) => href.startsWith(`${path}/`) && !href.endsWith('/new'));
};

/** Every form of the sections that changes what is there already. */
const formsOf = async (screens: TestScreens): Promise<string[]> => [
  '/yard/about',
  ...(await everyLink(screens, '/yard/moulds')),
  ...(await everyLink(screens, '/yard/panels')),
  ...(await everyLink(screens, '/yard/kits')),
  // How strong a mix is by then is only asked.
  ...(await everyLink(screens, '/yard/mixes')).filter((path) => !path.endsWith('/strength')),
  ...(await everyLink(screens, '/yard/stock')),
  ...(await everyLink(screens, '/yard/hours')),
  '/yard/temperatures',
  ...(await everyLink(screens, '/yard/temperatures')),
];

/** Sends every form just as it is shown. */
const sendAll = async (screens: TestScreens): Promise<number> => {
  const paths = await formsOf(screens);
  for (const path of paths) {
    const answer = await screens.post(path, sentAsShown(await (await screens.get(path)).text()));
    expect([path, answer.status]).toEqual([path, 303]);
  }
  return paths.length;
};

const yardIn = ({ database }: TestScreens, now: string) => database.read((tx) => loadYardFile(tx, now));

describe('forms sent as they are shown', () => {
  test('leave the demo yard as it was', async () => {
    const screens = await demoScreens();
    const before = await yardIn(screens, DEMO_NOW);
    // The yard, 12 moulds, 5 pieces, 5 kits, 2 mixes, 9 materials, 4 hours that repeat, a single day, the months.
    expect(await sendAll(screens)).toBe(40);
    const after = await yardIn(screens, DEMO_NOW);
    // Steps of the months go as far as is planned and a year more.
    const { temperatures, ...rest } = after;
    const { temperatures: steps, ...restBefore } = before;
    expect(rest).toEqual(restBefore);
    expect(temperatures.slice(0, steps.length)).toEqual(steps);
  });

  test('leave figures and rules that no form would write as they were', async () => {
    const { yard, mixes, materials } = smallYard();
    const odd = smallYard({
      mixes: [
        {
          ...mixes[0]!,
          ...{ yieldKgPerBag: 27.5 + 1 / 3, bagStep: 0.25, maxBags: 0.75, cureHours: 1 / 3, protectHours: 0.1 + 0.2 },
          ...{ activationKelvin: 0, referenceCelsius: 20 + 1 / 7, minCelsius: 1 / 3, maxCelsius: 30.123 },
          perBag: [{ material: 'mortar', quantity: 1 / 3 }],
        },
      ],
      materials: [
        { ...materials[0]!, unit: 'kg', onHand: 1000 / 3, pack: 0.3, minimum: 1e-7, unitPrice: 1 / 3, leadDays: 0 },
        { ...materials[1]!, stickMm: 3000.04, kerfMm: 1 / 3, supplier: 'Yard next door', shelfLifeDays: 7300 },
      ],
      yard: { ...yard, batchWorthDays: 1 / 3, bagWorthDays: 0.1 + 0.2, rackSpaces: 7 },
      work: [
        { rule: 'RRULE:FREQ=WEEKLY', from: '2027-01-02', start: '08:00', end: '12:00' },
        { rule: 'FREQ=DAILY', from: '2027-01-02', start: '16:00', end: '24:00', allows: ['strip', 'pack'] },
        { rule: 'FREQ=MONTHLY;BYMONTHDAY=-1', from: '2027-01-02', until: '2027-12-31', start: '06:07', end: '07:08' },
        { rule: 'FREQ=WEEKLY;INTERVAL=2;BYDAY=SU,MO;WKST=SU', from: '2027-01-03', start: '10:00', end: '11:00' },
        { rule: 'FREQ=WEEKLY;BYDAY=TU', from: '2027-01-02', start: '10:00', end: '11:00', allows: ['prep', 'pack'] },
      ],
      extra: [{ date: '2027-04-20', start: '00:00', end: '24:00', crew: 3, allows: ['pack'] }],
      closed: ['2027-04-20', '2027-05-01'],
      temperatures: [{ from: '2027-04-03', celsius: 20 + 1 / 7 }],
    });
    const screens = await screensOver(odd);
    const now = odd.yard.now;
    const before = await yardIn(screens, now);
    await sendAll(screens);
    expect(await yardIn(screens, now)).toEqual(before);
  });
});
