import { dateOfDay, minuteOf } from '../../../shared/time.ts';
import { readYardFile, type YardFile } from '../../../shared/yard-file.ts';
import { calendarOf } from '../../../src/engine/calendar/calendar.ts';
import { type Dice, diceOf } from './dice.ts';

type Material = YardFile['materials'][number];
type Place = Pick<YardFile['yard'], 'timeZone' | 'now'> & { today: number };
type Lot = NonNullable<Material['lots']>[number];

const lotsOf = (dice: Dice, onHand: number, place: Place): Lot[] => {
  const now = minuteOf(place.now);
  const lots: Lot[] = [];
  let rest = onHand;
  for (let n = dice.whole(0, 3); n > 0 && rest > 0.01; n--) {
    const quantity = n === 1 && dice.chance(0.5) ? rest : Math.max(0.25, Math.round(rest * dice.pick([2, 3]) * 0.2));
    if (quantity > rest) break;
    rest -= quantity;
    lots.push({
      quantity,
      ...(dice.chance(0.85) ? { useBy: dateOfDay(place.today + dice.pick([-1, 0, 1, 3, 8, 20, 60])) } : {}),
      ...(dice.chance(0.25)
        ? { openedAt: calendarOf(place.timeZone).instantText(now - dice.pick([0, 60, 1440, 5000])) }
        : {}),
    });
  }
  return lots;
};

const withDates = (dice: Dice, materials: readonly Material[], place: Place): Material[] =>
  materials.map((material) => {
    if (material.stickMm !== undefined || !dice.chance(0.35)) return material;
    const lots = dice.chance(0.7) ? lotsOf(dice, material.onHand, place) : [];
    return {
      ...material,
      ...(dice.chance(0.6) ? { shelfLifeDays: dice.pick([0, 1, 3, 7, 14, 30, 90]) } : {}),
      ...(dice.chance(0.5) ? { openedDays: dice.pick([0, 1, 3, 14]), opensBy: dice.pick([1, 1, 2, 0.5, 25]) } : {}),
      ...(lots.length > 0 ? { lots } : {}),
    };
  });

/**
 * The yard, where now and then a material goes past its date: as it comes, as it was opened, or in lots of their own; things
 * are brought by some time of the day, and now and then they are overdue. By dice of
 * their own, so that all else of a seed's yard is what it was.
 */
export const datedYard = (yard: YardFile, seed: number): YardFile => {
  const { timeZone, now } = yard.yard;
  const place = { timeZone, now, today: calendarOf(timeZone).dayOf(minuteOf(now)) };
  const dice = diceOf(seed + 800_000_000);
  const materials = withDates(dice, yard.materials, place);
  const deliveredBy = dice.pick(['00:00', '17:00', '10:30', '23:59']);
  const incoming = yard.incoming.map((goods) => (dice.chance(0.2) ? { ...goods, on: '2020-01-01' } : goods));
  const read = readYardFile({ ...yard, yard: { ...yard.yard, deliveredBy }, materials, incoming });
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return read.yard;
};
