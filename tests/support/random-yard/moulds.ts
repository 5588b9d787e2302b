import { type DayNumber, dateOfDay, minuteOf } from '../../../shared/time.ts';
import type { YardFileInput } from '../../../shared/yard-file.ts';
import { calendarOf } from '../../../src/engine/calendar/calendar.ts';
import type { Dice } from './dice.ts';
import type { Place } from './hours.ts';

type Mould = YardFileInput['moulds'][number];
type Casting = YardFileInput['castings'][number];

const conditionOf = (dice: Dice, today: DayNumber): Pick<Mould, 'condition' | 'prepped' | 'repairedOn'> => {
  const roll = dice.unit();
  if (roll < 0.05) return { condition: 'retired' };
  if (roll < 0.12) return { condition: 'damaged' };
  if (roll < 0.2) return { condition: 'damaged', repairedOn: dateOfDay(today + dice.whole(-2, 20)) };
  if (roll < 0.38) return { condition: 'dirty' };
  return { condition: 'ready', prepped: dice.chance(0.25) };
};

/** A sealing coat every few turns, with time to dry, or none at all. */
const coatOf = (dice: Dice): Partial<Mould> => {
  if (dice.chance(0.3)) return { turnsSinceOil: dice.whole(0, 9) };
  const oilEveryTurns = dice.whole(2, 9);
  const turnsSinceOil = dice.whole(0, oilEveryTurns);
  return { oilEveryTurns, turnsSinceOil, oilMinutes: dice.whole(5, 20), oilDryMinutes: dice.pick([0, 30, 60, 720]) };
};

/** A mould of one casting; now and then it also makes others of the same mix, at the cost of changing it over. */
const mouldOf = (dice: Dice, casting: Casting, number: number, castings: Casting[], today: DayNumber): Mould => {
  const others = castings.filter((x) => x.mix === casting.mix && x.id !== casting.id);
  const also = dice.chance(0.25) ? dice.some(others, dice.whole(1, 2)) : [];
  const makes = [
    { casting: casting.id },
    ...also.map((x) => ({ casting: x.id, changeMinutes: dice.pick([0, 8, 12, 25]) })),
  ];
  return {
    id: `${casting.id} no. ${number}`,
    makes,
    setFor: dice.pick(makes).casting,
    ...conditionOf(dice, today),
    ...coatOf(dice),
  };
};

/** Up to `most` moulds a length, and once in a while a length that no mould makes. */
export const mouldsOf = (dice: Dice, castings: Casting[], most: number, today: DayNumber): Mould[] =>
  castings.flatMap((casting) => {
    const count = dice.chance(0.04) ? 0 : dice.whole(1, most);
    return Array.from({ length: count }, (_, i) => mouldOf(dice, casting, i + 1, castings, today));
  });

/** Pieces still in moulds, poured in the days before now. A mould with a piece in it is not prepped. */
export const inMouldOf = (dice: Dice, moulds: Mould[], place: Place): YardFileInput['inMould'] => {
  const calendar = calendarOf(place.timeZone);
  return moulds
    .filter((mould) => !mould.prepped && dice.chance(0.2))
    .map((mould) => ({
      mould: mould.id,
      casting: dice.chance(0.8) ? mould.setFor : dice.pick(mould.makes).casting,
      filledAt: calendar.instantText(minuteOf(place.now) - dice.pick([0, 60, 300, 1440, 4000, dice.whole(0, 12_000)])),
    }));
};
