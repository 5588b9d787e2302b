import { dateOfDay, dayNumber } from '../../../shared/time.ts';
import { readYardFile, type YardFile, type YardFileInput } from '../../../shared/yard-file.ts';
import { type Dice, diceOf } from '../random-yard/dice.ts';

/** What a small yard has beside one mix, moulds of one length each and one person. */
const GRID_KINDS = ['plain', 'rack', 'two-mixes', 'changing', 'coat', 'mixed'] as const;
export type GridKind = (typeof GRID_KINDS)[number];

const MONDAY = '2027-04-05';
const STEP_MINUTES = 5;

type Castings = YardFileInput['castings'];
type Moulds = YardFileInput['moulds'];

interface Features {
  rack: boolean;
  twoMixes: boolean;
  changing: boolean;
  coat: boolean;
  people: boolean;
}

const featuresOf = (dice: Dice, kind: GridKind): Features => {
  const has = (name: GridKind) => kind === name || (kind === 'mixed' && dice.chance(0.4));
  return {
    rack: has('rack'),
    twoMixes: has('two-mixes'),
    changing: has('changing'),
    coat: has('coat'),
    people: has('mixed'),
  };
};

/** A fast-setting mix that may turn twice in a long session; a slow one that is stripped another day. */
const mixesOf = (dice: Dice, { twoMixes }: Features): YardFileInput['mixes'] => {
  const mix = (id: string, demouldMinutes: number, cureHours: number) => ({
    id,
    name: id,
    yieldKgPerBag: 30,
    maxBags: 1,
    mixMinutes: 10,
    workingMinutes: dice.step(10, 20, STEP_MINUTES),
    washMinutes: dice.pick([0, 5]),
    attendMinutes: dice.pick([0, 0, 30]),
    demouldMinutes,
    cureHours,
    perBag: [{ material: 'mortar', quantity: 1 }],
  });
  const rapid = mix('rapid', dice.step(40, 80, 10), dice.pick([0, 24, 48, 72]));
  return twoMixes ? [rapid, mix('slow', dice.step(600, 1200, 60), dice.pick([24, 72, 96]))] : [rapid];
};

const castingsOf = (dice: Dice, mixes: YardFileInput['mixes'], { changing, people }: Features): Castings => {
  const count = mixes.length > 1 || changing ? 2 : dice.whole(1, 2);
  return Array.from({ length: count }, (_, i) => ({
    id: `panel-${i + 1}`,
    name: `Panel ${i + 1}`,
    mix: mixes[Math.min(i, mixes.length - 1)]!.id,
    kg: dice.pick([10, 15]),
    fillMinutes: dice.pick([5, 5, 10]),
    stripMinutes: dice.pick([5, 10]),
    stripCrew: people && i === 0 ? 2 : 1,
    cleanMinutes: dice.pick([5, 10]),
    prepMinutes: dice.pick([10, 15]),
    rackSpaces: dice.whole(1, 2),
    perPiece: [],
    cuts: [],
  }));
};

const mouldsOf = (dice: Dice, castings: Castings, { changing, coat }: Features): Moulds => {
  const moulds: Moulds = castings.flatMap((casting, c) =>
    Array.from({ length: dice.whole(1, 2) }, (_, i) => ({
      id: `${casting.id} no. ${i + 1}`,
      makes: [{ casting: casting.id }],
      setFor: casting.id,
      condition: dice.pick(['ready', 'ready', 'dirty'] as const),
      ...(coat && c === 0
        ? {
            oilEveryTurns: 2,
            turnsSinceOil: dice.whole(0, 2),
            oilMinutes: dice.pick([5, 10]),
            oilDryMinutes: dice.pick([30, 60]),
          }
        : {}),
    })),
  );
  if (changing) {
    const first = moulds[0]!;
    first.makes = castings.map((c, i) => ({ casting: c.id, changeMinutes: i === 0 ? 5 : dice.pick([5, 10, 15]) }));
  }
  return moulds;
};

const hoursOf = (dice: Dice, { people }: Features): Pick<YardFileInput, 'work' | 'extra'> => {
  const clock = (minutes: number) =>
    `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`;
  const window = (weekday: string, start: number, minutes: number, crew = 1) => ({
    rule: `FREQ=WEEKLY;BYDAY=${weekday}`,
    from: '2027-01-01',
    start: clock(start),
    end: clock(start + minutes),
    crew,
  });
  const saturday = dice.step(110, 150, 10);
  const work = [window('SA', 8 * 60, saturday), window('WE', 18 * 60, dice.step(60, 90, 10))];
  if (people) work.push(window('SA', 9 * 60, 60));
  return { work, extra: [] };
};

/** Orders for 6 to 12 pieces in all, their dates about as soon as the yard could do them or sooner. */
const ordersOf = (dice: Dice, castings: Castings, packs: boolean): Pick<YardFileInput, 'orders' | 'kits'> => {
  const kits = castings.map((c) => ({
    id: `kit-${c.id}`,
    name: `Kit of ${c.name}`,
    pieces: [{ casting: c.id, count: 1 }],
    parts: [],
    cuts: [],
    packMinutes: STEP_MINUTES,
  }));
  const orders: YardFileInput['orders'] = [];
  let left = dice.whole(6, 12);
  for (let i = 1; left > 0; i++) {
    const lines = dice.some(castings, dice.whole(1, castings.length)).map((c) => {
      const quantity = Math.max(1, Math.min(left, dice.whole(1, 4)));
      left -= quantity;
      return packs ? { kit: `kit-${c.id}`, quantity } : { casting: c.id, quantity };
    });
    const due = dateOfDay(dayNumber(MONDAY) + dice.whole(4, 14));
    orders.push({ id: `27-${String(i).padStart(3, '0')}`, due, weight: dice.whole(1, 3), lines });
  }
  return { orders, kits: packs ? kits : [] };
};

/** Mortar for a few batches and more later, or plenty. */
const mortarOf = (dice: Dice, scarce: boolean): Pick<YardFileInput, 'materials' | 'incoming'> => ({
  materials: [{ id: 'mortar', name: 'Mortar', unit: 'bag', onHand: scarce ? dice.whole(1, 3) : 100 }],
  incoming: scarce ? [{ material: 'mortar', quantity: 50, on: dateOfDay(dayNumber(MONDAY) + dice.whole(3, 12)) }] : [],
});

/** Some pieces finished before, one still curing, and one in a mould since the Saturday before. */
const piecesBefore = (dice: Dice, castings: Castings, moulds: Moulds): Pick<YardFileInput, 'finished' | 'inMould'> => ({
  finished: dice.chance(0.5)
    ? [
        { casting: castings[0]!.id, count: 1 },
        { casting: castings[0]!.id, count: 1, readyAt: `${MONDAY}T12:00:00+01:00` },
      ]
    : [],
  inMould: dice.chance(0.5)
    ? [{ mould: moulds[0]!.id, casting: moulds[0]!.setFor, filledAt: '2027-04-03T09:00:00+01:00' }]
    : [],
});

const inputOf = (dice: Dice, kind: GridKind, seed: number): YardFileInput => {
  const features = featuresOf(dice, kind);
  const mixes = mixesOf(dice, features);
  const castings = castingsOf(dice, mixes, features);
  const input: YardFileInput = {
    format: 'mould-rota/yard',
    version: 1,
    yard: {
      name: `Grid yard ${seed}, ${kind}`,
      timeZone: 'Europe/Dublin',
      now: `${MONDAY}T07:00:00+01:00`,
      horizonDays: 120,
      setUpMinutes: dice.pick([0, 5]),
      clearUpMinutes: dice.pick([0, 5]),
      ...(features.rack ? { rackSpaces: dice.whole(2, 5) } : {}),
      ...(dice.chance(0.5)
        ? { handoverDays: ['SA', ...dice.some(['MO', 'TU', 'TH'] as const, dice.whole(0, 1))] }
        : {}),
    },
    ...hoursOf(dice, features),
    closed: [],
    temperatures: [],
    ...mortarOf(dice, kind === 'mixed' && dice.chance(0.4)),
    mixes,
    castings,
    moulds: mouldsOf(dice, castings, features),
    ...ordersOf(dice, castings, features.people),
    finished: [],
    inMould: [],
  };
  return kind === 'mixed' ? { ...input, ...piecesBefore(dice, castings, input.moulds) } : input;
};

/**
 * A small yard whose every duration and time of day is a multiple of 5 minutes, so that the exact program covers it: one
 * to two castings, two to five moulds, 6 to 12 pieces. It depends on its seed alone; without a kind the seed gives it.
 */
export const gridYard = (seed: number, kind: GridKind = GRID_KINDS[seed % GRID_KINDS.length]!): YardFile => {
  const read = readYardFile(inputOf(diceOf(seed), kind, seed));
  if (!read.ok) throw new Error(`seed ${seed}: ${read.faults.map((x) => `${x.path}: ${x.message}`).join('; ')}`);
  return read.yard;
};
