import { buyingFaults, type MaterialBuying, materialBuying } from '../../../shared/supplier.ts';
import { minorDigits } from '../../engine/cost/minor-units.ts';
import { massText, readMass } from '../../engine/units/mass.ts';
import { readAmount } from '../../engine/units/material-unit.ts';
import type { Outcome } from '../core/context.ts';
import { amountField } from './amount-typed.ts';
import { sentence } from './fits-yard-file.ts';
import type { FormFields } from './form-fields.ts';
import type { MaterialWriting } from './material-figures.ts';
import { moneyTyped } from './money-typed.ts';
import { TypedReader } from './typed-reader.ts';

/** What the figures of buying count by: the material's unit and pack. */
interface BoughtIn {
  unit: string;
  pack: number;
}

type Writing = Pick<MaterialWriting, 'system' | 'currency'>;

/** A material of which nothing is said about buying. */
export const NO_BUYING: MaterialBuying = materialBuying.parse({});

const AMOUNTS = ['perTurn', 'perBatch', 'buyAt'] as const;

/** What the fields show: "from 10 at 8.90; from 40 at 8.20" in packs, amounts in the unit that is shown. */
export const materialBuyingTexts = (
  buying: MaterialBuying,
  { unit, pack }: BoughtIn,
  { system, currency }: Writing,
): Record<string, string> => {
  const amount = (value: number | undefined) => (value === undefined ? '' : amountField(value, unit, system));
  return {
    kgPerUnit: buying.kgPerUnit === undefined ? '' : massText(buying.kgPerUnit, system),
    breaks: buying.breaks
      .map(({ from, unitPrice }) => `from ${from / pack} at ${(unitPrice * pack).toFixed(minorDigits(currency))}`)
      .join('; '),
    ...Object.fromEntries(AMOUNTS.map((name) => [name, amount(buying[name])])),
  };
};

const BREAK = /^(?:from\s+)?(\d{1,6})\s*(?:packs?)?\s*(?:at|:|for)\s*(.+)$/i;
const HOW_BREAKS = 'Write how many packs and the price of one: from 10 at 8.90; from 40 at 8.20.';

const breaksTyped = (reader: TypedReader, { pack }: BoughtIn, currency: string): MaterialBuying['breaks'] => {
  const breaks: MaterialBuying['breaks'] = [];
  for (const part of reader
    .text('breaks')
    .split(/;|\n/)
    .map((one) => one.trim())
    .filter(Boolean)) {
    const [, packs, price = ''] = BREAK.exec(part) ?? [];
    const money = moneyTyped(price, currency);
    if (packs === undefined || Number(packs) === 0 || !money.ok || money.value === null) {
      reader.refuse('breaks', money.ok ? HOW_BREAKS : money.reason);
      return [];
    }
    breaks.push({ from: Number(packs) * pack, unitPrice: Number((money.value / pack).toPrecision(15)) });
  }
  return breaks.sort((a, b) => a.from - b.from);
};

/** What the form of a material says of buying it; `before` is what was said, whose figures stay where they are as shown. */
export const materialBuyingTyped = (
  typed: FormFields,
  before: MaterialBuying,
  bought: BoughtIn,
  writing: Writing,
): Outcome<MaterialBuying> => {
  const reader = new TypedReader(typed);
  const shown = materialBuyingTexts(before, bought, writing);
  const read = <T>(name: string, now: T, next: () => T, none: T): T =>
    reader.text(name) === (shown[name] ?? '') ? now : reader.text(name) === '' ? none : next();
  const amount = (name: (typeof AMOUNTS)[number]) =>
    read(
      name,
      before[name],
      () => reader.measure(name, (text) => readAmount(text, bought.unit, writing.system)),
      undefined,
    );
  const facts = {
    kgPerUnit: read(
      'kgPerUnit',
      before.kgPerUnit,
      () => reader.measure('kgPerUnit', (text) => readMass(text, writing.system)),
      undefined,
    ),
    breaks: read('breaks', before.breaks, () => breaksTyped(reader, bought, writing.currency), []),
    notBefore: before.notBefore,
    ...{ perTurn: amount('perTurn'), perBatch: amount('perBatch'), buyAt: amount('buyAt') },
  };
  for (const name of ['kgPerUnit', 'perTurn', 'perBatch'] as const)
    if (facts[name] === 0 && reader.faults.every(({ path }) => path !== name))
      reader.refuse(name, 'Write a number above 0, or leave it empty.');
  const said = Object.fromEntries(Object.entries(facts).filter(([, value]) => value !== undefined)) as MaterialBuying;
  // What stands as it was may stay so.
  if (reader.faults.length === 0)
    for (const { field, message } of buyingFaults(said))
      if (said[field] !== before[field]) reader.refuse(field, sentence(message));
  return reader.outcome(said);
};
