import { describe, expect, test } from 'vitest';
import { materialBuyingsById, suppliersByName } from '../../db/stores/supplier-store.ts';
import { loadYardFile } from '../../db/stores/yard-store.ts';
import { DEMO_NOW, demoScreens, screensOver } from '../support/screens.ts';
import { sentAsShown } from '../support/sent-as-shown.ts';

const SHOP = {
  ...{ name: 'Quay Builders', fetched: 'fetched', 'opens:MO': 'on', 'opens:TU': 'on', opensRule: '', deliversRule: '' },
  ...{ closed: '24 Dec to 26 Dec; 3 May', minimumOrder: '60', deliveryPrice: '', carriesKg: '400', aheadDays: '21' },
  leadDays: '',
};

describe('a supplier', () => {
  test('is added with its days and what it asks for', async () => {
    const screens = await screensOver();
    const text = await screens.textAfter(await screens.post('/yard/suppliers/new', SHOP));
    expect(text).toContain('Quay Builders added to the suppliers');
    expect(text).toContain(
      'Fetched there. Open Monday and Tuesday. Closed Mon 3 May and on 3 more days. Least order €60.00. 400 kg at once.',
    );
    expect(await screens.database.read(suppliersByName)).toEqual([
      {
        name: 'Quay Builders',
        opens: { rule: 'FREQ=WEEKLY;BYDAY=MO,TU', from: '2027-04-08' },
        closed: ['2027-05-03', '2027-12-24', '2027-12-25', '2027-12-26'],
        ...{ fetched: true, minimumOrder: 60, deliveryPrice: 0, carriesKg: 400, aheadDays: 21 },
      },
    ]);
  });

  test('is gone once it is undone, and there again once that is', async () => {
    const screens = await screensOver();
    const undo = async (answer: Response) => {
      const change = new URL(answer.headers.get('Location') ?? '', 'http://yard').searchParams.get('done') ?? '';
      return screens.post('/undo', { change, back: '/yard/suppliers' });
    };
    const names = async () => (await screens.database.read(suppliersByName)).map(({ name }) => name);
    const undone = await undo(await screens.post('/yard/suppliers/new', SHOP));
    expect(await names()).toEqual([]);
    await undo(undone);
    expect(await names()).toEqual(['Quay Builders']);
  });

  test('says at each field what could not be read', async () => {
    const screens = await screensOver();
    const wrong = { ...SHOP, name: '', opensRule: 'FREQ=YEARLY', closed: 'soonish', minimumOrder: 'lots' };
    const answer = await screens.post('/yard/suppliers/new', wrong);
    const html = await answer.text();
    expect(answer.status).toBe(422);
    for (const name of ['name', 'opensRule', 'closed', 'minimumOrder']) expect(html).toContain(`id="${name}-error"`);
  });

  test('whom a material names is there, and its form as it is shown says nothing new of it', async () => {
    const screens = await demoScreens();
    const path = `/yard/suppliers/${encodeURIComponent('Farm shop')}`;
    const shown = sentAsShown(await (await screens.get(path)).text());
    expect(shown).toMatchObject({ name: 'Farm shop', fetched: 'unsaid' });
    await screens.post(path, { ...shown, name: 'Hill farm', leadDays: '6' });
    const yard = await screens.database.read((tx) => loadYardFile(tx, DEMO_NOW));
    expect(yard.materials.find(({ id }) => id === 'mesh')).toMatchObject({ supplier: 'Hill farm', leadDays: 6 });
  });

  test('that sells something stays', async () => {
    const screens = await demoScreens();
    const answer = await screens.post(`/yard/suppliers/${encodeURIComponent('Grocer')}/remove`, {});
    expect(await answer.text()).toContain('Grocer sells Citric acid.');
  });
});

describe('what buying asks of a material', () => {
  test('is typed with it, and stays where the form is sent as it is shown', async () => {
    const screens = await demoScreens();
    const path = '/yard/stock/fast-setting-mortar';
    const form = async () => sentAsShown(await (await screens.get(path)).text());
    expect(await form()).toMatchObject({ kgPerUnit: '25 kg', breaks: 'from 40 at 19.90' });
    await screens.post(path, await form());
    const before = await screens.database.read(materialBuyingsById);
    expect(before.get('fast-setting-mortar')).toEqual({ kgPerUnit: 25, breaks: [{ from: 40, unitPrice: 19.9 }] });
    await screens.post(path, { ...(await form()), breaks: '10 at 20; from 60 at 18', perTurn: '2' });
    const refused = await screens.post(path, { ...(await form()), perTurn: '2' });
    expect(await refused.text()).toContain('say already how much of it is used');
  });
});
