import { dateOfDay, minuteOf } from '../../../shared/time.ts';
import { readYardFile, type YardFile } from '../../../shared/yard-file.ts';
import { calendarOf } from '../../../src/engine/calendar/calendar.ts';
import { type Dice, diceOf } from './dice.ts';

type Supplier = NonNullable<YardFile['suppliers']>[number];

const RULES = [
  'FREQ=WEEKLY;BYDAY=MO,TU,WE,TH,FR,SA',
  'FREQ=WEEKLY;BYDAY=MO,TU,WE,TH,FR',
  'FREQ=WEEKLY;BYDAY=TU,FR',
  'FREQ=WEEKLY;INTERVAL=2;BYDAY=WE',
  'FREQ=DAILY;INTERVAL=3',
  'FREQ=MONTHLY;BYDAY=1MO,3MO',
  'FREQ=WEEKLY;COUNT=4;BYDAY=TH',
];

const supplierOf = (dice: Dice, name: string, today: number): Supplier => {
  const rule = () => ({ rule: dice.pick(RULES), from: dateOfDay(today - dice.whole(0, 20)) });
  const closed = Array.from({ length: dice.whole(0, 4) }, () => dateOfDay(today + dice.whole(0, 20)));
  return {
    name,
    ...(dice.chance(0.8) ? { opens: rule() } : {}),
    ...(dice.chance(0.5) ? { delivers: rule() } : {}),
    closed,
    ...(dice.chance(0.4) ? { fetched: true } : {}),
  };
};

/** The yard, where most of what it buys is of suppliers that are not there every day. By dice of their own, so that all else stays. */
export const suppliedYard = (yard: YardFile, seed: number): YardFile => {
  const { timeZone, now } = yard.yard;
  const today = calendarOf(timeZone).dayOf(minuteOf(now));
  const dice = diceOf(seed + 900_000_000);
  const names = ['Hill Street', 'By post', 'Old quarry'];
  const materials = yard.materials.map((one) =>
    dice.chance(0.75) ? { ...one, supplier: dice.pick([...names, 'Nobody said']) } : one,
  );
  const suppliers = names.map((name) => supplierOf(dice, name, today));
  const read = readYardFile({ ...yard, materials, suppliers });
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return read.yard;
};
