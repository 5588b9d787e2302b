import { dateOfDay } from '../../../shared/time.ts';
import type { YardFileInput } from '../../../shared/yard-file.ts';
import type { Dice } from './dice.ts';
import type { Place } from './hours.ts';

type Mix = YardFileInput['mixes'][number];
type Casting = YardFileInput['castings'][number];

/** A fast-setting mortar: several turns a day. Figures around those of a small yard, common practice, no source. */
const rapid = (dice: Dice): Mix => ({
  id: 'rapid',
  name: 'Fast-setting panel mix',
  yieldKgPerBag: dice.pick([27.5, 27.2, 24]),
  bagStep: dice.pick([0.5, 1]),
  maxBags: dice.pick([1, 1, 2]),
  mixMinutes: dice.whole(6, 12),
  workingMinutes: dice.whole(15, 28),
  washMinutes: dice.pick([0, 5, 8]),
  attendMinutes: dice.pick([0, 0, 30, 60]),
  demouldMinutes: dice.step(45, 110, 5),
  cureHours: dice.pick([0, 24, 48, 72]),
  minCelsius: 5,
  maxCelsius: 32,
  perBag: [
    { material: 'fast-setting-mortar', quantity: 1 },
    { material: 'plasticiser', quantity: 1 },
    { material: 'fibre', quantity: dice.pick([10, 9.4, 12.5]) },
  ],
});

const ordinary = (dice: Dice, people: number): Mix => ({
  id: 'ordinary',
  name: 'Coping mix',
  yieldKgPerBag: 26.8,
  bagStep: dice.pick([0.5, 1]),
  maxBags: dice.whole(1, 4),
  crew: people > 1 && dice.chance(0.25) ? 2 : 1,
  mixMinutes: dice.whole(10, 15),
  workingMinutes: dice.step(40, 90, 5),
  washMinutes: 5,
  demouldMinutes: dice.step(960, 1440, 60),
  cureHours: dice.pick([72, 120, 168, 60.5]),
  activationKelvin: dice.pick([4000, 4700, 5000]),
  minCelsius: dice.pick([3, 5]),
  maxCelsius: 32,
  protectHours: dice.pick([0, 24, 48]),
  perBag: [{ material: 'ordinary-mix', quantity: 1 }],
});

const white = (dice: Dice): Mix => ({
  id: 'white',
  name: 'White face mix',
  yieldKgPerBag: 21,
  maxBags: dice.whole(1, 3),
  mixMinutes: 8,
  workingMinutes: dice.whole(30, 45),
  attendMinutes: dice.pick([0, 15]),
  demouldMinutes: dice.step(240, 480, 30),
  cureHours: 48,
  referenceCelsius: dice.pick([20, 23]),
  perBag: [
    { material: 'white-cement', quantity: 0.4 },
    { material: 'sand', quantity: 15.5 },
  ],
});

/** One to three mixes; the first two are the rapid and the ordinary one, in either order. */
export const mixesOf = (dice: Dice, people: number): Mix[] => {
  const both = [rapid(dice), ordinary(dice, people)];
  if (dice.chance(0.3)) both.reverse();
  return [...both, white(dice)].slice(0, dice.pick([1, 2, 2, 2, 3]));
};

/** The largest piece that a batch of the mix can fill. */
const mostKg = (mix: Mix): number => mix.maxBags * mix.yieldKgPerBag;

const castingOf = (dice: Dice, mix: Mix, lengthMm: number, people: number): Casting => {
  const kg = Math.round((lengthMm / 914) * dice.pick([13.6, 12, 15.5, 22.7]) * 10) / 10;
  return {
    id: `${mix.id}-${lengthMm}`,
    name: `Panel ${lengthMm}`,
    mix: mix.id,
    kg: Math.min(kg, mostKg(mix)),
    fillMinutes: dice.whole(4, 8),
    stripMinutes: dice.whole(5, 10),
    stripCrew: people > 1 && lengthMm > 1000 && dice.chance(0.4) ? 2 : 1,
    cleanMinutes: dice.whole(0, 7),
    prepMinutes: dice.whole(6, 16),
    rackSpaces: lengthMm > 1000 && dice.chance(0.4) ? 2 : 1,
    perPiece: dice.chance(0.7) ? [{ material: 'mesh', quantity: Math.round(lengthMm * 0.135) / 1000 }] : [],
    cuts: dice.chance(0.6) ? [{ material: 'sleeve-pipe', lengthMm: dice.pick([190, 190, 240]), count: 2 }] : [],
  };
};

export const castingsOf = (dice: Dice, mixes: Mix[], most: number, people: number): Casting[] =>
  mixes.flatMap((mix, i) =>
    dice
      .some([400, 500, 550, 610, 800, 914, 1100, 1220], i === 0 ? dice.whole(1, most) : dice.whole(1, 2))
      .map((lengthMm) => castingOf(dice, mix, lengthMm, people)),
  );

/** Monthly means of a mild place, January first, °C. */
const MONTHLY = [6, 6, 8, 10, 13, 16, 18, 18, 15, 12, 8, 6];

/** Expected temperatures: none, one, monthly ones, or monthly ones with cold spells of a few days among them. */
export const temperaturesOf = (dice: Dice, place: Place, cold: boolean): YardFileInput['temperatures'] => {
  if (!cold && dice.chance(0.15)) return [];
  if (!cold && dice.chance(0.15)) return [{ from: dateOfDay(place.today), celsius: dice.whole(8, 26) }];
  const month = Number(dateOfDay(place.today).slice(5, 7)) - 1 + (place.south ? 6 : 0);
  const warmer = cold ? 0 : dice.whole(0, 10);
  const mean = (day: number) => MONTHLY[(month + Math.floor((day + 15) / 30)) % 12]! + warmer;
  const steps = new Map<number, number>();
  for (let day = -10; day < 400; day += 30) steps.set(day, mean(day));
  for (let spell = 0; spell < (cold ? 5 : dice.whole(0, 1)); spell++) {
    const start = dice.whole(0, 45);
    steps.set(start, dice.whole(-4, 4));
    steps.set(start + dice.whole(1, 5), mean(start));
  }
  if (!cold && dice.chance(0.1)) steps.set(dice.whole(3, 20), dice.whole(29, 36));
  const list = [...steps].map(([day, celsius]) => ({ from: dateOfDay(place.today + day), celsius }));
  return dice.chance(0.2) ? list.reverse() : list;
};
