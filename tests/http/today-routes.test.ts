import { describe, expect, test } from 'vitest';
import { finishedPieces } from '../../db/stores/finished-store.ts';
import { materialById } from '../../db/stores/material-store.ts';
import { mouldById } from '../../db/stores/mould-store.ts';
import type { YardFileInput } from '../../shared/yard-file.ts';
import { createApp } from '../../src/http/app.ts';
import { computeWithoutThread } from '../../src/usecases/core/computations.ts';
import { plannedYard, saturday } from '../support/planned-yard.ts';
import { demoScreens, screensOn, screensOver, textOf } from '../support/screens.ts';
import { smallYard } from '../support/small-yard.ts';

const changeIn = (answer: Response) =>
  new URL(answer.headers.get('Location') ?? '', 'http://x').searchParams.get('done') ?? '';

/** The planned yard at a moment; one panel of the order's two is finished. */
const screensAt = (now: string, changes: Partial<YardFileInput> = {}) =>
  screensOver(plannedYard({ yard: { ...plannedYard().yard, now }, ...changes }));

describe('Today before a session', () => {
  test('on another day says when the next one is and lists its steps, without buttons', async () => {
    const { get } = await screensAt('2027-04-08T09:00:00+01:00');
    const text = await textOf(await get('/today'));
    expect(text).toMatch(/^Next session Sat 10 Apr, 8:00 to 12:00: pour 1 piece, strip 1 and pack 1 order\./);
    expect(text).toContain('Sat 10 Apr: 1 person. Last mix of Thin panel mix by 11:25.');
    expect(text).toContain(
      '8:10 to 8:25 Set up 900 no. 1 Set it up for Panel 900. 8:25 to 8:40 Mix 1 bag of Thin panel mix By the recipe',
    );
    expect(text).toContain('Thin panel mix, per bag: 1 bag of Fast-setting mortar To have at hand for all of it');
    expect(text).not.toContain('Panel 900 for School garden Poured');
    expect(text).toContain('Strip 900 no. 1 Panel 900 for School garden. May be stripped from 9:55.');
    expect(text).toContain('No work on Sat 10 Apr');
    expect(text).toContain('Take care');
  });

  test('on its day has the buttons', async () => {
    const { get } = await screensAt(saturday('07:30'));
    const text = await textOf(await get('/today'));
    expect(text).toMatch(/^Today, 8:00 to 12:00: pour 1 piece/);
    expect(text).toContain('No work today');
    expect(text).toContain('900 no. 1: Panel 900 for School garden Poured');
    expect(text).not.toContain('Now 7:30');
  });

  test('offers mixing first while a batch is to come, and poured first once it has begun', async () => {
    const { get, database } = await screensAt(saturday('07:30'));
    const kinds = async (answer: Response) =>
      [...(await answer.text()).matchAll(/<button type="submit" class="button (\w+)"[^>]*>(Mixing now|Poured)</g)]
        .map(([, kind, word]) => `${word}: ${kind}`)
        .slice(0, 2);
    expect(await kinds(await get('/today'))).toEqual(['Mixing now: plain', 'Poured: quiet']);
    expect(await kinds(await screensOn(database, saturday('08:25')).get('/today'))).toEqual([
      'Poured: plain',
      'Mixing now: quiet',
    ]);
  });

  test('with nothing to do says so', async () => {
    const { get } = await screensAt(saturday('07:30'), { orders: [] });
    const text = await textOf(await get('/today'));
    expect(text).toMatch(/^No session has anything to do\./);
    expect(text).toContain('Take an order');
  });

  test('passes over hours without work, and says so', async () => {
    const friday = { date: '2027-04-09', start: '09:00', end: '10:00', allows: ['pack' as const] };
    const { get } = await screensAt('2027-04-09T08:00:00+01:00', { extra: [friday] });
    const text = await textOf(await get('/today'));
    expect(text).toMatch(/^Next session Sat 10 Apr/);
    expect(text).toContain("Nothing is planned for today's hours, 9:00 to 10:00.");
  });
});

describe('Today during a session', () => {
  test('says what comes next and where the clock stands', async () => {
    const { get } = await screensAt(saturday('08:31'));
    const text = await textOf(await get('/today'));
    expect(text).toMatch(/^Under way until 8:45: set up 900 no\. 1\./);
    expect(text).toContain('now 8:30');
  });

  test('takes down what was poured, then stripped, then packed, each with its undo', async () => {
    const { get, post, textAfter, database } = await screensAt(saturday('09:22'));
    const pour = {
      bags: '1',
      mould0: '900 no. 1',
      casting0: 'panel-900',
      order0: '27-001',
      sealed0: '',
      filled0: 'yes',
    };
    const poured = await textAfter(await post('/today/poured', pour));
    expect(poured).toContain('900 no. 1 poured. Undo No date moved.');
    expect(poured).toContain('Done today 9:20: 900 no. 1 poured. Undo');
    expect(poured).toContain(
      'Strip 900 no. 1 Panel 900 for School garden. May be stripped from 10:40. Planning time only: check the piece. Look at the corners, whether a pin goes through each sleeve, blowholes, and the thickness. Stripped Not good What is wrong If you like: crack, honeycomb, corner broken off. To mend Scrap',
    );
    const asked = await post('/today/stripped', { mould: '900 no. 1', cameOut: 'good' });
    expect(asked.status).toBe(422);
    expect(await textOf(asked)).toMatch(
      /Nothing is recorded yet\..* That is 75 minutes before it has set, .* Yes, record it No/,
    );
    const sure = { mould: '900 no. 1', cameOut: 'good', sure: 'early' };
    const stripped = await textAfter(await post('/today/stripped', sure));
    expect(stripped).toContain('900 no. 1 stripped. Undo');
    expect(await database.read(finishedPieces)).toHaveLength(2);
    const packed = await textAfter(await post('/today/packed', { order: '27-001' }));
    expect(packed).toContain('Packed for School garden. Undo');
    expect(packed).toContain('Packed, to be handed over School garden, order 27-001. Unpack');
    expect(await textAfter(await post('/today/unpacked', { order: '27-001' }))).toContain(
      'Unpacked for School garden.',
    );
    expect(await textOf(await get('/today'))).toContain(
      'Pack for School garden 1 × Pair of panels. With it: 2 × 300 mm of Rod 12 mm, from 2 offcuts of 300 mm. Packed',
    );
  });

  test('leaves out a mould that was unticked', async () => {
    const { post, database } = await screensAt(saturday('09:29'));
    const pours = {
      mould0: '900 no. 1',
      casting0: 'panel-900',
      mould1: '900 no. 2',
      casting1: 'panel-900',
      filled1: 'yes',
      bags: '1',
    };
    expect((await post('/today/poured', pours)).status).toBe(303);
    expect((await database.read((tx) => mouldById(tx, '900 no. 1')))?.piece).toBeNull();
    expect((await database.read((tx) => mouldById(tx, '900 no. 2')))?.piece).not.toBeNull();
  });

  // Clean and coat 900 no. 2: 6 and 5 minutes from 8:10; it dries for 20.
  test('shows a coat as a step of its own, and takes down that it is on', async () => {
    const { get, post, textAfter, database } = await screensAt(saturday('08:21'), {
      orders: [{ id: '27-001', due: '2027-04-10', lines: [{ casting: 'panel-900', quantity: 3 }] }],
    });
    const page = await textOf(await get('/today'));
    expect(page).toMatch(/Clean and coat 900 no\. 2 The coat dries until \d+:\d\d\. The mould is set up after that\./);
    expect(page).toContain('Set up 900 no. 2');
    const text = await textAfter(await post('/today/coated', { mould: '900 no. 2', at: '', step: '' }));
    expect(text).toContain('900 no. 2 is coated, and dries. Undo');
    const mould = await database.read((tx) => mouldById(tx, '900 no. 2'));
    expect(mould).toMatchObject({ condition: 'ready', turnsSinceOil: 0 });
    expect(text).not.toContain('coat 900 no. 2');
  });

  test('marks a mould ready to pour', async () => {
    const { post, textAfter } = await screensAt(saturday('08:22'));
    const inList = { 'HX-Current-URL': 'http://127.0.0.1/today?list=rest&from=12&done=3' };
    const answer = await post('/today/prepared', { mould: '900 no. 1', casting: 'panel-900', sealed: '' }, inList);
    expect(answer.headers.get('Location')).toMatch(/^\/today\?list=rest&from=12&done=\d+$/);
    const text = await textAfter(answer);
    expect(text).toContain('900 no. 1 is ready to pour. Undo');
    expect(text).toMatch(/Next, 8:\d\d: mix 1 bag for 900 no\. 1\./);
  });

  test('writes down a pour that was not planned, with its time', async () => {
    const { post, textAfter, database } = await screensAt(saturday('09:29'));
    const form = {
      other: 'yes',
      mould0: '900 no. 1',
      casting0: 'panel-900',
      filled0: 'yes',
      order: '27-001',
      ...{ bags: '', when: 'typed or now', time: '09:05' },
    };
    const unknown = await post('/today/poured', { ...form, order: '27-999' });
    expect(unknown.status).toBe(422);
    expect(await textOf(unknown)).toContain('27-999');
    expect(await textAfter(await post('/today/poured', form))).toContain('900 no. 1 poured at 9:05.');
    expect((await database.read((tx) => mouldById(tx, '900 no. 1')))?.piece).toMatchObject({
      filledAt: saturday('09:05'),
      order: '27-001',
    });
  });
});

describe('a piece that is not good', () => {
  const full = () => {
    const base = plannedYard();
    return screensAt(saturday('10:30'), {
      mixes: [{ ...base.mixes[0]!, cureHours: 72 }],
      inMould: [{ mould: '900 no. 1', casting: 'panel-900', filledAt: saturday('09:00'), order: '27-001' }],
    });
  };
  const toMend = { mould: '900 no. 1', cameOut: 'mend', reason: 'crack' };

  test('is kept aside with its reason, on Today and on the page of the order it would be for', async () => {
    const { get, post, textAfter } = await full();
    const text = await textAfter(await post('/today/stripped', toMend));
    expect(text).toContain('900 no. 1 stripped, the piece is to be mended: crack. Undo');
    expect(text).toMatch(/To mend Until it is mended a piece counts for no order; .* planned meanwhile\./);
    expect(text).toContain(
      'Panel 900 from 900 no. 1, stripped Sat 10 Apr: crack. Once mended it is fit to go out from Tue 13 Apr, by plan.',
    );
    expect(await textOf(await get('/orders/27-001'))).toContain(
      'To mend, and not counted until then: 1 × Panel 900, on Today.',
    );
    expect(await textOf(await get('/changes'))).toContain('the piece is to be mended: crack');
  });

  test('is mended with a tap, or for a later day, which is said when it cannot be', async () => {
    const { get, post, textAfter } = await full();
    await post('/today/stripped', toMend);
    const refused = await post('/today/mended', { piece: '1', fitFrom: '12 Apr' });
    expect(refused.status).toBe(422);
    const html = await refused.text();
    expect(html).toContain('It has not cured before Tue 13 Apr. Leave this empty for that day.');
    expect(html).toContain('value="12 Apr"');
    expect(html).toMatch(
      /<details class="not-good no-print" open[^>]*><summary aria-label="Mended, but fit to go out later/,
    );
    const text = await textAfter(await post('/today/mended', { piece: '1', fitFrom: '16 Apr' }));
    expect(text).toContain('Panel 900 from 900 no. 1 mended, fit to go out from Fri 16 Apr. Undo');
    expect(await textOf(await get('/today'))).not.toContain('To mend Until');
  });

  test('may not be hard yet, and is looked at again in a quarter of an hour', async () => {
    const { get, post, textAfter } = await full();
    expect(await textOf(await get('/today'))).toContain('Stripped Not hard yet, look again in 15 min Not good');
    const text = await textAfter(await post('/today/not-hard', { mould: '900 no. 1' }));
    expect(text).toContain('900 no. 1 not hard yet, to be looked at again at 10:45. Undo');
    expect(text).toMatch(/^.* Next, 10:45: strip 900 no\. 1\./);
    const again = await post('/today/not-hard', { mould: '900 no. 1' });
    expect(again.status).toBe(422);
    expect(await textOf(again)).toContain('900 no. 1 is stripped only after 10:45 as it is. Nothing was changed.');
  });

  test('is scrapped at once or later', async () => {
    const { post, textAfter } = await full();
    await post('/today/stripped', toMend);
    const text = await textAfter(await post('/today/scrapped', { piece: '1' }));
    expect(text).toContain('Panel 900 from 900 no. 1 scrapped. Undo No date moved.');
    expect(text).toContain('10:30: Panel 900 from 900 no. 1 scrapped.');
  });

  test('keeps what was typed when it is refused', async () => {
    const { post } = await screensAt(saturday('10:30'), {
      inMould: [{ mould: '900 no. 1', casting: 'panel-900', filledAt: saturday('09:00') }],
    });
    const html = await (await post('/today/stripped', { mould: '900 no. 1', reason: 'crack' })).text();
    expect(html).toContain('Say how the piece came out. Nothing was changed.');
    expect(html).toMatch(/<details class="not-good no-print" open/);
    expect(html).toContain('value="crack"');
  });
});

/** Two sessions of which nothing is recorded, with more to make than one of them does. */
const severalSessions = async () => {
  const order = { id: '27-002', customer: 'Ann', due: '2027-05-01', lines: [{ casting: 'panel-900', quantity: 6 }] };
  const materials = plannedYard().materials.map((one) => ({ ...one, onHand: 20 }));
  const screens = await screensAt(saturday('07:30'), { orders: [...plannedYard().orders, order], materials });
  await screens.get('/today');
  return screens;
};

describe('a batch', () => {
  const batch = { mould: '900 no. 1', at: saturday('08:22') };

  /* Planned from 8:22 to 8:39; begun at 8:30 it is over at 8:47. */
  test('begins with a tap, is under way from then on, and goes off with another', async () => {
    const { get, database } = await screensAt(saturday('07:30'));
    await get('/today');
    const { post, textAfter } = screensOn(database, saturday('08:30'));
    const begun = await textAfter(await post('/today/mixing', batch));
    expect(begun).toContain('Mixing begun for 900 no. 1. Undo');
    expect(begun).toContain(
      '8:30 to 8:50 Under way until 8:50 Mix 1 bag of Thin panel mix Pour by 9:00 Water first 1 bag of Fast-setting mortar, in parts while it turns',
    );
    const step = `late-batch-${Date.parse(saturday('08:30')) / 60_000}-900%20no.%201`;
    const thrown = await textAfter(await post('/today/thrown-away', { step }));
    expect(thrown).toContain('The mix for 900 no. 1 thrown away. Undo');
    expect(thrown).not.toContain('Under way since 8:30, until 8:45 Mix');
  });

  test('begun some minutes ago is under way since then; begun so long ago that it is over, it has to be recorded itself', async () => {
    const { get, database } = await screensAt(saturday('07:30'));
    await get('/today');
    const told = { ...batch, begunAt: saturday('08:30') };
    const over = await screensOn(database, saturday('09:30')).post('/today/mixing', told);
    expect(over.status).toBe(422);
    expect((await screensOn(database, saturday('08:29')).post('/today/mixing', told)).status).toBe(422);
    const { post, textAfter } = screensOn(database, saturday('08:36'));
    expect(await textAfter(await post('/today/mixing', told))).toContain(
      '8:30 to 8:50 Under way until 8:50 Mix 1 bag of Thin panel mix Pour by 9:00',
    );
  });

  test('that can not begin says so where it was tapped', async () => {
    const { get, database } = await screensAt(saturday('07:30'));
    await get('/today');
    const { post } = screensOn(database, saturday('08:20'));
    const refused = await post('/today/mixing', batch);
    expect(refused.status).toBe(422);
    expect(await textOf(refused)).toContain(
      '900 no. 1 is not set up yet. Mark it ready to pour first. Nothing was changed. Mixing now',
    );
    expect((await post('/today/thrown-away', { step: 'x' })).status).toBe(422);
  });
});

describe('after a session', () => {
  /** Planned before the session, of which nothing is recorded; one panel of the order's two is finished. */
  const untilNow = async (clock: string) => {
    const { database } = await screensAt(saturday('07:30'));
    const on = (later: string) => screensOn(database, saturday(later));
    await on('07:30').get('/today');
    return { ...on(clock), on };
  };

  test('leaves what was planned to be written down as it was planned', async () => {
    const { get, post, textAfter, database } = await untilNow('12:20');
    const text = await textOf(await get('/today'));
    expect(text).toContain(
      'To be recorded: pour 1 piece, strip 1 and pack 1 order. Not recorded yet, today, 8:00 to 12:00 The plan counts on it as it was planned, until you say how it was. All as planned 8:25 to 8:40 Mix 1 bag of Thin panel mix 900 no. 1: Panel 900 for School garden Poured at 8:40 Poured just now At another time, or otherwise 900 no. 1: Panel 900 for School garden Bags What was different Date on the bags As it is printed; several with a semicolon between them. Left alone, they are those that came first. Water in all Where not by the recipe. Mortar Its temperature. Air Its temperature. Mixed by Note Day Full at Poured then Not done Went off A mix that stiffens is thrown away: water does not bring it back. Its bags are gone. Nothing was in the moulds Moulds are to be cleaned 9:55 to 10:05',
    );
    const pour = { bags: '1', mould0: '900 no. 1', casting0: 'panel-900', order0: '27-001', filled0: 'yes' };
    const poured = await textAfter(await post('/today/poured', { ...pour, at: saturday('08:39') }));
    expect(poured).toContain('900 no. 1 poured at 8:39. Undo No date moved.');
    expect((await database.read((tx) => mouldById(tx, '900 no. 1')))?.piece?.filledAt).toBe(saturday('08:39'));
    expect(poured).toMatch(/To be recorded: strip 1 and pack 1 order\./);
    const stripped = await textAfter(
      await post('/today/stripped', { mould: '900 no. 1', cameOut: 'good', at: saturday('10:03') }),
    );
    expect(stripped).toContain('900 no. 1 stripped. Undo No date moved.');
    const packed = await textAfter(await post('/today/packed', { order: '27-001', at: saturday('10:10') }));
    expect(packed).toContain('Packed for School garden. Undo No date moved.');
    expect(packed).not.toContain('Not recorded yet');
  });

  test('is there hours later, and a pour still goes in by its time', async () => {
    const { get, post, textAfter } = await untilNow('19:00');
    const text = await textOf(await get('/today'));
    expect(text).toContain('Not recorded yet');
    expect(text).toMatch(/^To be recorded: pour 1 piece, strip 1 and pack 1 order\./);
    const form = {
      ...{ other: 'yes', mould0: '900 no. 1', casting0: 'panel-900', filled0: 'yes', order: '27-001', bags: '' },
      ...{ when: 'typed or now', time: '08:40' },
    };
    expect(await textAfter(await post('/today/poured', form))).toContain('900 no. 1 poured at 8:40. Undo');
  });

  test('takes all of it as planned with one tap, which is undone with one', async () => {
    const { get, post, textAfter, on } = await untilNow('12:20');
    await get('/today');
    const answer = await post('/today/as-planned', { all: 'yes' });
    const text = await textAfter(answer);
    expect(text).toContain('1 piece poured, 1 stripped, 1 order packed as planned. Undo No date moved.');
    expect(text).not.toContain('Not recorded yet');
    expect(text).toContain('Done today 12:20: 1 piece poured, 1 stripped, 1 order packed as planned. Undo');
    expect(await textOf(await get('/changes'))).toContain('1 piece poured, 1 stripped, 1 order packed as planned');
    const undo = { change: changeIn(answer), back: '/today' };
    const undone = await textAfter(await on('12:30').post('/undo', undo));
    expect(undone).toMatch(/To be recorded: pour 1 piece, strip 1 and pack 1 order\./);
    expect(undone).not.toContain('Done today');
  });

  test('asks where the stock book has too little, and what is missing is counted then', async () => {
    const { get, post, textAfter, on } = await untilNow('12:20');
    await get('/today');
    await on('12:15').post('/buying/counted', { material: 'mortar', counted: '0' });
    const answer = await post('/today/as-planned', { all: 'yes' });
    expect(answer.status).toBe(422);
    const text = await textOf(answer);
    expect(text).toContain(
      'Nothing is recorded yet. By the stock book there is too little Fast-setting mortar (none in',
    );
    expect(text).toContain('Yes, record it');
    const sure = await textAfter(await post('/today/as-planned', { all: 'yes', sure: 'short' }));
    expect(sure).toContain('1 piece poured, 1 stripped, 1 order packed as planned.');
    expect(sure).toContain('To be counted Fast-setting mortar: 1 bag more taken than the stock book had.');
    const counted = await textAfter(await post('/today/counted', { material: 'mortar', counted: '0' }));
    expect(counted).toContain('Fast-setting mortar counted: 0 in the yard');
    expect(counted).not.toContain('To be counted');
  });

  test('records nothing when one of it cannot be, and says so beside that one', async () => {
    const { get, post, on } = await untilNow('12:20');
    await get('/today');
    await on('12:15').post('/moulds/900 no. 1/damaged', { note: '' });
    const answer = await post('/today/as-planned', { all: 'yes' });
    expect(answer.status).toBe(422);
    const html = await answer.clone().text();
    const text = await textOf(answer);
    const why = '900 no. 1 is marked damaged. If it was poured before that, record this batch by itself.';
    expect(text).toContain(`None of it was recorded. ${why}`);
    const [, id] = /<a href="#(late-batch-[^"]+)">/.exec(html) ?? [];
    expect(html).toContain(`<li class="step step-batch" id="${id}">`);
    expect(await textOf(await get('/today'))).toMatch(/To be recorded: pour 1 piece, strip 1 and pack 1 order\./);
  });

  test('is answered by a second tap on a button as by the first', async () => {
    const { get, post } = await untilNow('12:20');
    const html = await (await get('/today')).text();
    const step = /name="step" value="(late-batch-[^"]+)"/.exec(html)?.[1] ?? '';
    const form = { step, bags: '1', mould0: '900 no. 1', casting0: 'panel-900', filled0: 'yes', at: saturday('08:39') };
    const [once, again] = [await post('/today/poured', form), await post('/today/poured', form)];
    expect([once.status, again.status]).toEqual([303, 303]);
    expect(changeIn(again)).toBe(changeIn(once));
  });

  test('takes what was not done off the list at once, one step or all of it, until that is undone', async () => {
    const { get, post, textAfter } = await untilNow('12:20');
    const html = await (await get('/today')).text();
    const pack = /name="step" value="(late-pack-[^"]+)"/.exec(html)?.[1] ?? '';
    const one = await post('/today/not-done', { step: pack });
    const without = await textAfter(one);
    expect(without).toContain('Not packed for School garden. Undo');
    expect(without).toMatch(/To be recorded: pour 1 piece and strip 1\./);
    const back = await textAfter(await post('/undo', { change: changeIn(one), back: '/today' }));
    expect(back).toMatch(/To be recorded: pour 1 piece, strip 1 and pack 1 order\./);
    const all = await post('/today/not-done', { all: 'yes' });
    const none = await textAfter(all);
    expect(none).toContain('1 piece not poured, 1 not stripped, 1 order not packed. Undo School garden');
    expect(none).toMatch(/Next session Sat 17 Apr, 8:00 to 12:00: pour 1 piece/);
    expect((await textAfter(await post('/undo', { change: changeIn(all), back: '/today' }))).slice(0, 400)).toContain(
      'Not recorded yet',
    );
  });

  test('stays what it was of a mould that is called otherwise since', async () => {
    const { get, post, textAfter } = await untilNow('12:20');
    const form = { id: '900 A', 'makes:panel-900': 'yes', 'change:panel-900': '0', oilEveryTurns: '' };
    expect(await textAfter(await post('/yard/moulds/900%20no.%201', form))).toContain('900 no. 1 is called 900 A now.');
    expect(await textOf(await get('/today'))).toContain('900 A: Panel 900 for School garden Poured at 8:40');
  });

  test('of several sessions is listed session by session, and recorded with one tap or session by session', async () => {
    const { database } = await severalSessions();
    const later = screensOn(database, '2027-04-19T09:00:00+01:00');
    const html = await (await later.get('/today')).text();
    const text = await textOf(new Response(html));
    expect(text).toMatch(/^To be recorded, of 2 sessions: pour \d pieces/);
    expect(text).toContain('All 2 sessions as planned');
    const list = html.slice(html.indexOf('id="late"')).split('</section>')[0]!;
    const sessions = new Set([...list.matchAll(/name="session" value="([^"]+)"/g)].map(([, key]) => key!));
    expect([...sessions]).toEqual([saturday('08:00'), '2027-04-17T08:00:00+01:00']);
    const one = await later.post('/today/as-planned', { session: saturday('08:00') });
    expect(await later.textAfter(one)).toMatch(/To be recorded, of Sat 17 Apr: /);
    await later.post('/undo', { change: changeIn(one), back: '/today' });
    const all = await later.textAfter(await later.post('/today/as-planned', { all: 'yes' }));
    expect(all).not.toContain('Not recorded yet');
  });

  test('is neither recorded nor given up by a form that does not say which', async () => {
    const { get, post } = await untilNow('12:20');
    for (const [action, form] of [
      ['not-done', {}],
      ['not-done', { step: '', session: '' }],
      ['as-planned', {}],
      ['as-planned', { step: 'late-batch-1-x' }],
    ] as const) {
      const answer = await post(`/today/${action}`, form);
      expect(answer.status).toBe(422);
      expect(await textOf(answer)).toContain('Say which work that is: one step, one session or all of it.');
    }
    expect(await textOf(await get('/today'))).toMatch(/^To be recorded: pour 1 piece, strip 1 and pack 1 order\./);
  });

  test('has nothing to say once all of it is answered', async () => {
    const { post } = await untilNow('13:00');
    await post('/today/as-planned', { all: 'yes' });
    for (const action of ['as-planned', 'not-done']) {
      const answer = await post(`/today/${action}`, { all: 'yes' });
      expect(answer.status).toBe(422);
      expect(await textOf(answer)).toContain('Nothing was changed.');
    }
  });

  test('takes no time that is still to come', async () => {
    const { post } = await untilNow('12:20');
    for (const [action, form] of [
      ['poured', { bags: '1', mould0: '900 no. 1', casting0: 'panel-900', filled0: 'yes' }],
      ['prepared', { mould: '900 no. 1', casting: 'panel-900' }],
      ['packed', { order: '27-001' }],
    ] as const) {
      const answer = await post(`/today/${action}`, { ...form, at: saturday('12:30') });
      expect(answer.status).toBe(422);
      expect(await textOf(answer)).toContain('That time is still to come.');
    }
  });
});

test('"At another time" asks for a time, and another pour may be just now', async () => {
  const { post, textAfter } = await screensAt(saturday('09:29'));
  const pour = { bags: '1', mould0: '900 no. 1', casting0: 'panel-900', filled0: 'yes', on: '', time: '' };
  const refused = await post('/today/poured', { ...pour, when: 'typed' });
  expect(refused.status).toBe(422);
  expect(await textOf(refused)).toContain('Which time? Write it as 8:30.');
  const now = await textAfter(await post('/today/poured', { ...pour, other: 'yes', when: 'typed or now' }));
  expect(now).toContain('900 no. 1 poured. Undo');
});

test('goods that were expected by a day that has gone by are asked about on Today, and come in there', async () => {
  const incoming = [
    { material: 'mortar', quantity: 6, on: '2027-04-07' },
    { material: 'rod', quantity: 2, on: '2027-04-08' },
  ];
  const yard = { ...smallYard().yard, deliveredBy: '17:00' };
  const { get, post, textAfter, database } = await screensOver(smallYard({ version: 2, yard, incoming }));
  const counted = 'the plan counts on it by 17:00 today';
  const asked = `Fast-setting mortar: 6 bags expected Wed 7 Apr, and ${counted}. Has it come? Arrived Not yet`;
  const html = await (await get('/today')).text();
  const text = await textOf(new Response(html));
  expect(text).toContain(asked);
  expect(text).not.toContain('Rod 12 mm: 2 sticks expected');
  const goods = /name="goods" value="(\d+)"/.exec(html)?.[1] ?? '';
  const after = await textAfter(await post('/today/arrived', { goods }));
  expect(after).toContain('Fast-setting mortar arrived.');
  expect(after).not.toContain('Has it come?');
  expect((await database.read((tx) => materialById(tx, 'mortar')))?.onHand).toBe(26);
  const twice = await post('/today/arrived', { goods });
  expect([twice.status, await textOf(twice)]).toEqual([422, expect.stringContaining('That has arrived already')]);
});

test('a mould past the day it was to be mended by is asked about on Today, and marked mended there', async () => {
  const moulds = plannedYard().moulds.map((mould, place) =>
    place === 1 ? { ...mould, condition: 'damaged' as const, prepped: false, repairedOn: '2027-04-09' } : mould,
  );
  const { get, post, textAfter } = await screensAt(saturday('09:00'), { moulds });
  const asked = '900 no. 2 was to be mended by Fri 9 Apr, and the plan counts on it. Is it mended? Mended Not yet';
  expect(await textOf(await get('/today'))).toContain(asked);
  expect(await textOf(await get('/moulds'))).toContain('Was to be mended by Fri 9 Apr, and the plan counts on it');
  const text = await textAfter(await post('/today/mould-mended', { mould: '900 no. 2' }));
  expect(text).toContain('900 no. 2 marked mended.');
  expect(text).not.toContain('Is it mended?');
});

test('a batch that is overdue can be written down as it was planned while the session goes on', async () => {
  const { database } = await screensAt(saturday('07:30'));
  const todayAt = async (clock: string) => textOf(await screensOn(database, saturday(clock)).get('/today'));
  await todayAt('07:30');
  expect(await todayAt('08:54')).not.toContain('Poured at 8:40');
  expect(await todayAt('08:55')).toContain('School garden Poured Poured at 8:40 Mixing now At another time');
});

describe('Today after a session', () => {
  test('shows the next one, and what stays in the moulds meanwhile', async () => {
    const inMould = [{ mould: '900 no. 1', casting: 'panel-900', filledAt: saturday('11:40'), order: '27-001' }];
    const { get } = await screensAt(saturday('12:00'), { inMould });
    const text = await textOf(await get('/today'));
    expect(text).toMatch(/^Next session Sat 17 Apr, 8:00 to 12:00: strip 1 and pack 1 order\./);
    expect(text).toContain('In moulds now');
    expect(text).toContain(
      '900 no. 1: Panel 900 for School garden, poured Sat 10 Apr, 11:40. May be stripped from 12:55. Planned for Sat 17 Apr, 8:10. Stripped',
    );
  });
});

describe('hours that are not as usual', () => {
  test('move dates, which is said with a message, and are undone from the list later on', async () => {
    const { get, post, textAfter } = await screensAt('2027-04-08T09:00:00+01:00', { finished: [] });
    const answer = await post('/today/no-work', { date: '2027-04-10' });
    const text = await textAfter(answer);
    expect(text).toContain(
      'No work on Sat 10 Apr. Undo School garden: Sat 10 Apr to Sat 17 Apr, 7 days later; 7 days after the date given.',
    );
    expect(text).toContain('Next session Sat 17 Apr');
    const later = await textOf(await get('/today'));
    expect(later).toContain('When the hours are not as usual No work on Sat 10 Apr. Undo');
    const undone = await textAfter(await post('/undo', { change: changeIn(answer), back: '/today' }));
    expect(undone).toContain('School garden: Sat 17 Apr to Sat 10 Apr, 7 days sooner');
    expect(await textOf(await get('/today'))).toMatch(/^Next session Sat 10 Apr/);
  });

  test('end earlier', async () => {
    const { post, textAfter } = await screensAt('2027-04-08T09:00:00+01:00');
    const text = await textAfter(await post('/today/stop-at', { session: saturday('08:00'), at: '11:00' }));
    expect(text).toContain('Work on Sat 10 Apr stops at 11:00. Undo');
    expect(text).toContain('8:00 to 11:00');
  });

  test('are slipped: the session at once, what that does to dates and to each order by itself, and it is done', async () => {
    const { get, post, textAfter } = await screensAt(saturday('08:05'), { finished: [] });
    const slip = { session: saturday('08:00'), at: '10:30' };
    const at = async (asked: Record<string, string>, headers = {}) =>
      textOf(await get(`/today/running-late?${new URLSearchParams(asked)}`, headers));
    const first = await post('/today/running-late', slip);
    const html = await first.clone().text();
    expect(await textOf(first)).toMatch(/All that is left begins \d+ minutes later.* no longer fit/);
    const asks = [...html.matchAll(/data-hx-get="(\/today\/running-late[^"]+)" data-hx-trigger="load"/g)].map(
      ([, path]) => path,
    );
    expect(asks.map((path) => new URL(path!.replaceAll('&amp;', '&'), 'http://x').searchParams.get('without'))).toEqual(
      [null, '27-001'],
    );
    // Without script the page goes on to an address that waits for all of it.
    expect(html).toMatch(/<noscript><meta http-equiv="refresh" content="0;url=\/today\/running-late\?[^"]+#slip"/);
    const part = { 'HX-Request-Type': 'partial' };
    const dates = await at(slip, part);
    const choice = await at({ ...slip, without: '27-001' }, part);
    expect(dates).toContain('This moves one promise. No longer fits, and is left for another day:');
    expect(dates).toContain('Go on by this plan');
    expect(choice).toMatch(/^Leave out 2 pieces for School garden\./);
    expect(await at({ ...slip, at: '07:00' }, part)).toContain('Write a time between 08:00 and 12:00.');
    // There it reads as it does with script: the session, the dates, and each choice, with nothing left to come.
    const whole = await (await get(`/today/running-late?${new URLSearchParams(slip)}`)).text();
    const read = await textOf(new Response(whole));
    for (const words of [/All that is left begins \d+ minutes later/, /no longer fit/]) expect(read).toMatch(words);
    expect(whole).toContain('id="slip"');
    for (const words of [dates, choice]) expect(read).toContain(words);
    expect(whole).not.toContain('is being worked out');
    expect(await at({ ...slip, without: '27-001' })).toContain(choice);
    // Sent on with what it does out of sight, the choice is asked about again by its name.
    const unseen = await textOf(await post('/today/running-late', { ...slip, without: '27-001', seen: 'another' }));
    expect(unseen).toContain(choice);
    expect(unseen).toContain('Which days does it move?');
    const none = await get(`/today/running-late?${new URLSearchParams({ ...slip, without: '27-999' })}`);
    expect([none.status, await textOf(none)]).toEqual([422, expect.stringContaining('Nothing more is to be poured')]);
    const seen = /name="seen" value="([^"]+)"/.exec(whole)?.[1] ?? '';
    expect(await textAfter(await post('/today/running-late', { ...slip, seen }))).toContain(
      'Running late on Sat 10 Apr',
    );
    const wrong = await post('/today/running-late', { ...slip, at: '' });
    expect([wrong.status, await textOf(wrong)]).toEqual([422, expect.stringContaining('Write a time such as 11:30.')]);
  });

  test('are slipped: what is given up says so, and never that no date moves', async () => {
    const { database } = await screensAt(saturday('08:05'), { finished: [] });
    const background = {
      ...{ planMade: () => {}, improving: () => false, compute: async () => null },
      computeForRequest: computeWithoutThread,
    };
    const app = createApp({ database, now: () => saturday('08:05'), background });
    const slip = new URLSearchParams({ session: saturday('08:00'), at: '10:30' });
    const text = await textOf(await app.request(`/today/running-late?${slip}`));
    expect(text.split('took too long to work out')).toHaveLength(3);
    expect(text).not.toContain('moves no date');
    expect(text).toContain('Go on by this plan');
    expect(text).toContain('Do these another day');
  });

  test('have one person fewer, asked whose hours those are', async () => {
    const work = [
      { rule: 'FREQ=WEEKLY;BYDAY=SA', from: '2027-01-02', start: '08:00', end: '12:00' },
      { rule: 'FREQ=WEEKLY;BYDAY=SA', from: '2027-01-02', start: '09:00', end: '11:30' },
    ];
    const { get, post, textAfter } = await screensAt('2027-04-08T09:00:00+01:00', { work });
    expect(await textOf(await get('/today'))).toContain("Who can't come? 8:00 to 12:00 9:00 to 11:30 One person fewer");
    const text = await textAfter(await post('/today/one-fewer', { session: saturday('08:00'), window: '1' }));
    expect(text).toContain('Sat 10 Apr: 1 person. Last mix');
    expect(text).not.toContain("Who can't come?");
  });
});

describe('what cannot be is refused with a reason, and nothing is written down', () => {
  test.each([
    ['poured', { mould0: '900 no. 1', casting0: 'panel-900' }, 'Tick what was poured.'],
    ['poured', { mould0: '900 no. 1', casting0: 'panel-900', filled0: 'yes', bags: 'some' }, 'is no number'],
    [
      'poured',
      { other: 'yes', mould0: '900 no. 1', casting0: 'panel-900', filled0: 'yes', when: 'typed or now', time: '23:00' },
      'still to come',
    ],
    ['prepared', { mould: '900 no. 1', casting: 'panel-600' }, 'does not make that piece'],
    ['stripped', { mould: '900 no. 1', cameOut: 'good' }, 'has no piece in it'],
    ['stripped', { mould: '900 no. 1' }, 'Say how the piece came out.'],
    ['mended', { piece: '7' }, 'is not waiting to be mended any more'],
    ['mended', { piece: '7', fitFrom: '31 Apr' }, '31 Apr does not exist.'],
    ['scrapped', {}, 'is not waiting to be mended any more'],
    ['packed', { order: '27-001' }, 'not fit to go out yet: 1 × Panel 900'],
    ['packed', { order: '27-999' }, 'There is no order 27-999.'],
    ['unpacked', { order: '27-001' }, 'is not packed'],
    ['no-work', { date: '2027-02-30' }, 'That date does not exist.'],
    ['no-work', {}, 'That date does not exist.'],
    ['stop-at', { session: saturday('08:00'), at: '' }, 'Write a time such as 11:30.'],
    ['one-fewer', { session: saturday('08:00'), window: 'x' }, "Choose who can't come."],
  ])('%s %o', async (action, form, message) => {
    const { get, post } = await screensAt(saturday('09:00'));
    const before = await textOf(await get('/today'));
    const answer = await post(`/today/${action}`, form);
    expect(answer.status).toBe(422);
    const text = await textOf(answer);
    expect(text).toContain('That was not recorded.');
    expect(text).toContain(message);
    expect(await textOf(await get('/today'))).toBe(before);
  });

  test('packing short asks whether it was counted', async () => {
    const { post, textAfter } = await screensAt(saturday('09:00'), {
      finished: [{ casting: 'panel-900', count: 2, readyAt: saturday('09:30') }],
    });
    const answer = await post('/today/packed', { order: '27-001' });
    expect(await textOf(answer)).toContain('I have counted; it is all there');
    expect(await textAfter(await post('/today/packed', { order: '27-001', evenShort: 'yes' }))).toContain(
      'Packed for School garden.',
    );
  });

  test('an other pour keeps what was ticked and typed', async () => {
    const { post } = await screensAt(saturday('09:00'));
    const form = {
      other: 'yes',
      mould1: '900 no. 2',
      casting1: 'panel-900',
      filled1: 'yes',
      order: '27-001',
      ...{ bags: '9', when: 'typed or now', time: '08:45' },
    };
    const html = await (await post('/today/poured', form)).text();
    expect(html).toContain('How many bags? Above 0, up to 1 at once.');
    expect(html).toMatch(/name="filled1" value="yes" checked/);
    expect(html).toContain('value="08:45"');
    expect(html).toMatch(/<option value="27-001" selected/);
  });

  test('no other form is known', async () => {
    const { post } = await screensAt(saturday('09:00'));
    expect((await post('/today/slept', {})).status).toBe(404);
  });
});

test('the demo has a day to work down', async () => {
  const { get } = await demoScreens();
  const text = await textOf(await get('/today'));
  expect(text).toContain('Strip 1200 no. 1 Panel 1200 for School garden. May be stripped now.');
});
