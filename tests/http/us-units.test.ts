import { describe, expect, test } from 'vitest';
import { setHabits } from '../../db/stores/habits-store.ts';
import { openOrders } from '../../db/stores/order-store.ts';
import { setUnits } from '../../db/stores/units-store.ts';
import { loadYardFile } from '../../db/stores/yard-store.ts';
import { currentPlan } from '../../src/usecases/plan/make-plan.ts';
import { screensOver, type TestScreens, textOf } from '../support/screens.ts';
import { sentAsShown } from '../support/sent-as-shown.ts';
import { smallYard } from '../support/small-yard.ts';

/** Everything that is a measure is kept in SI: water by the litre, acid by the gram, edging by the metre. */
const measuredYard = () => {
  const base = smallYard();
  return smallYard({
    ...base,
    materials: [
      ...base.materials,
      { id: 'water', name: 'Water', unit: 'l', onHand: 200 },
      { id: 'acid', name: 'Citric acid', unit: 'g', onHand: 100 },
      { id: 'edging', name: 'Edging', unit: 'm', onHand: 30, leadDays: 2 },
    ],
    mixes: base.mixes.map((mix) => ({
      ...mix,
      perBag: [...mix.perBag, { material: 'water', quantity: 4.7 }, { material: 'acid', quantity: 57 }],
    })),
    castings: base.castings.map((casting) => ({
      ...casting,
      cuts: [{ material: 'rod', lengthMm: 190.5, count: 2 }],
    })),
  });
};

const yardIn = async (system: 'metric' | 'US') => {
  const screens = await screensOver(measuredYard());
  await screens.database.write(async (tx) => {
    await setUnits(tx, system);
    await setHabits(tx, { currency: 'USD', weekStart: 'SU' });
  });
  return screens;
};

/*
 * By definition 1 lb = 453.59237 g = 16 oz, 1 US qt = 0.946352946 l, 1 ft = 0.3048 m, 1 in = 25.4 mm: NIST SP 811 (2008),
 * appendix B; NIST Handbook 44, appendix C. So 4.7 l are 4.97 qt, 57 g are 2.01 oz, 190.5 mm are 7 1/2 in.
 */
describe('the pages of a US yard', () => {
  test('say in its units what goes into a mix, what is cut, and what an order is for', async () => {
    const { get, post, textAfter } = await yardIn('US');
    const today = await textOf(await get('/today'));
    // 4.7 l are 4.97 qt and 57 g are 2.01 oz: fetched to a tenth, never too little.
    expect(today).toContain('5 qt of Water 2.1 oz of Citric acid');
    expect(today).toContain('4 × 7 1/2 in of Rod 12 mm');
    expect(today).toContain('2 × 11 13/16 in of Rod 12 mm');
    expect(today).not.toMatch(/\d (l|g|mm) of/);
    const order = { what0: 'material:edging', quantity0: '10', what1: 'material:acid', quantity1: '20 g' };
    expect(await textAfter(await post('/orders', order))).toContain('10 ft Edging 0.71 oz Citric acid');
  });

  test('show an order that is changed in its units, and leave it exactly as it was when nothing is', async () => {
    const { get, post, database } = await yardIn('US');
    await post('/orders', { what0: 'material:edging', quantity0: '3 m', customer: 'Ann' });
    const html = await (await get('/orders/27-002/edit')).text();
    expect(html).toContain('value="9.84"');
    expect(html).toContain('name="quantity0Was" value="3"');
    const form = { what0: 'material:edging', quantity0: '9.84', quantity0Was: '3', customer: 'Ann Moran' };
    expect((await post('/orders/27-002/edit', form)).status).toBe(303);
    expect((await database.read(openOrders))[1]?.lines).toEqual([{ material: 'edging', quantity: 3 }]);
  });

  test("say in its units why an order can't be made", async () => {
    const { post, textAfter } = await yardIn('US');
    // Two panels fill a bag: six pairs take 57 g each beside the 57 g of the first, and 100 g are there.
    const text = await textAfter(await post('/orders', { what0: 'kit:pair', quantity0: '6' }));
    expect(text).toMatch(/Citric acid cannot be had: \d+(\.\d+)? more oz are needed/);
    expect(text).not.toContain('more g');
  });
});

describe('the same yard typed in two systems', () => {
  /** 4 lb, 48 qt, 24 ft and 6 ft, panels of 35 1/2 by 8 by 1 1/2 in and a box of 37 in, and the same in SI, to the last figure. */
  const TYPED = {
    US: {
      ...{ acid: '4 lb', water: '48', edging: '24', ordered: '6', on: '4/9' },
      ...{ long: '35 1/2', high: '8"', thick: '1 1/2 in', side: '3 ft 1', ground: '4' },
    },
    metric: {
      ...{ acid: '1814.36948', water: '45.424941408', edging: '7.3152', ordered: '1.8288 m', on: '9.4.' },
      ...{ long: '901.7', high: '203.2', thick: '38.1 mm', side: '0.9398 m', ground: '10.16 cm' },
    },
  };
  const typedYard = async (system: 'metric' | 'US'): Promise<TestScreens> => {
    const [screens, typed] = [await yardIn(system), TYPED[system]];
    const size = { length: typed.side, width: typed.side, courses: '1', ground: typed.ground };
    const done = [
      await screens.post('/yard/panels/panel-900', {
        ...sentAsShown(await (await screens.get('/yard/panels/panel-900')).text()),
        ...{ length: typed.long, height: typed.high, thickness: typed.thick },
      }),
      await screens.post('/kits/by-size', { ...size, name: 'Box', packMinutes: '10' }),
      await screens.post('/buying/counted', { material: 'acid', counted: typed.acid }),
      await screens.post('/buying/counted', { material: 'water', counted: typed.water }),
      await screens.post('/buying/bought', { material: 'edging', quantity: typed.edging, on: typed.on, price: '40' }),
      await screens.post('/orders', {
        ...{
          what0: 'material:edging',
          quantity0: typed.ordered,
          what1: 'kit:pair',
          quantity1: '1',
          what2: 'kit:box',
          quantity2: '1',
        },
        ...{ customer: 'Ann', wantedOn: system === 'US' ? '5/8' : '8/5' },
      }),
    ];
    expect(done.map(({ status }) => status)).toEqual([303, 303, 303, 303, 303, 303]);
    return screens;
  };

  test('is the same yard file and the same plan', async () => {
    const [US, metric] = [await typedYard('US'), await typedYard('metric')];
    const now = measuredYard().yard.now;
    const file = ({ database }: TestScreens) => database.read((tx) => loadYardFile(tx, now));
    const plan = async ({ database }: TestScreens) => (await currentPlan({ database, now })).plan;
    expect(await file(US)).toEqual(await file(metric));
    const planned = await plan(US);
    expect(planned).toEqual(await plan(metric));
    expect(planned.pours.length).toBe(8);
  });
});
