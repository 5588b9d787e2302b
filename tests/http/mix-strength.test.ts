import { describe, expect, test } from 'vitest';
import { screensOver, textOf } from '../support/screens.ts';
import { smallYard } from '../support/small-yard.ts';

const base = smallYard();
const weekLong = [{ ...base.mixes[0]!, name: 'Coping mix', demouldMinutes: 24 * 60, cureHours: 168 }];
const PATH = '/yard/mixes/thin/strength';

describe('how strong a piece is by then', () => {
  test('asks for the cement first, and says that fast-setting mortar has no curve', async () => {
    const { get } = await screensOver(smallYard({ mixes: weekLong }));
    const text = await textOf(await get(PATH));
    expect(text).toContain('Which cement is in Coping mix?');
    expect(text).toContain('Fast-setting mortar has none: go by its data sheet.');
    expect(text).not.toContain('28-day strength');
    expect(await (await get('/yard/mixes')).text()).toContain(`href="${PATH}"`);
  });

  // Thursday 8 April 09:00, seven days at 20 °C count 6.987 (EN 1992-1-1:2004, eq B.10): 0.778 of class N by eq 3.2; 70 % is there
  // after 4.755 / 0.9981 days, half of it not before three days.
  test('by the curve of that cement, at the temperatures expected', async () => {
    const { get } = await screensOver(smallYard({ mixes: weekLong }));
    const text = await textOf(await get(`${PATH}?cement=N`));
    expect(text).toContain('About 77 % of its 28-day strength by Thu 15 Apr.');
    expect(text).toContain('Stripped, after 24 hours Fri 9 Apr not known: too young for any curve');
    expect(text).toContain('Not before Sun 11 Apr half of its 28-day strength');
    expect(text).toContain('Not before Tue 13 Apr 70 % of its 28-day strength');
    expect(text).toContain('kept at 20 °C (68 °F), as no temperature is expected');
    expect(text).toContain('Share of its 28-day strength, day by day, and when it has it');
    for (const mark of ['stripped Fri 9 Apr', 'half Sun 11 Apr', '70 % Tue 13 Apr', 'fit to go out Thu 15 Apr'])
      expect(text.split(mark).length - 1, mark).toBe(2);
    const cold = await screensOver(smallYard({ mixes: weekLong, temperatures: [{ from: '2027-01-01', celsius: 10 }] }));
    // The plan lets it wait for 12.8 days at 10 °C; they count 7.87 days of the curve: 0.80.
    expect(await textOf(await cold.get(`${PATH}?cement=N`))).toMatch(
      /About 80 % .* by Wed 21 Apr\..*expect, 10 °C today/,
    );
  });

  test('for planning only, and a test of the mix comes first', async () => {
    const { get } = await screensOver(smallYard({ mixes: weekLong }));
    for (const cement of ['R', 'N', 'S', 'I', 'III'])
      expect(await textOf(await get(`${PATH}?cement=${cement}`))).toContain('No curve releases a piece');
  });

  test('a cement that nobody knows is asked for again; a mix that is not there is a page that is not there', async () => {
    const { get } = await screensOver(smallYard({ mixes: weekLong }));
    expect(await textOf(await get(`${PATH}?cement=rapid`))).toContain('Which cement is in Coping mix?');
    expect((await get('/yard/mixes/none/strength?cement=N')).status).toBe(404);
  });
});
