import { describe, expect, test } from 'vitest';
import type { WorkRecord } from '../../../shared/work-record.ts';
import { measuredStrips, withStrips } from '../../../src/engine/begin/measured-strips.ts';
import { smallYard } from '../../support/small-yard.ts';

const at = (day: number, minute: number) => new Date(Date.UTC(2027, 3, day, 8, minute)).toISOString();

interface Told {
  day: number;
  minutes: number;
  look?: boolean;
  early?: boolean;
  air?: number;
}

/** A piece of its own day: poured, perhaps looked at too soon, and stripped so many minutes after it was full. */
const piece = ({ day, minutes, look = true, early = false, air }: Told): WorkRecord[] => {
  const one = { mould: '900 no. 1', casting: 'panel-900', filledAt: at(day, 0) };
  const told = air === undefined ? {} : { airCelsius: air };
  return [
    { kind: 'poured', at: at(day, 0), mix: 'thin', bags: 1, pours: [one], ...told },
    ...(look ? [{ kind: 'not hard' as const, at: at(day, minutes - 15), ...one }] : []),
    {
      ...{ kind: 'stripped', at: at(day, minutes), tappedAt: at(day, minutes), ...one, cameOut: 'good' },
      ...(early ? { mayFrom: at(day, minutes + 20) } : {}),
    },
  ];
};

describe('when pieces are hard', () => {
  test('is said by those that were looked at too soon, and by those that came out early', () => {
    const records = [90, 92, 100].flatMap((minutes, day) => piece({ day: day + 1, minutes }));
    const [thin] = measuredStrips(records, smallYard());
    expect(thin).toMatchObject({ mix: 'thin', count: 3, figure: 75, demouldMinutes: 96, activationKelvin: 5000 });
    expect(thin?.minutes.median).toBe(92);
    expect(withStrips(smallYard(), thin!).mixes[0]).toMatchObject({ demouldMinutes: 96 });
    expect(measuredStrips(piece({ day: 1, minutes: 60, look: false, early: true }), smallYard())[0]?.count).toBe(1);
    expect(measuredStrips(piece({ day: 1, minutes: 80, look: false }), smallYard())).toEqual([]);
  });

  test('counts at the temperature of its day: the one told, or else the one expected', () => {
    // exp(-5000 (1/283.15 - 1/293.15)) is 0.5475, so 137 minutes at 10 °C are 75 at 20 °C.
    const cold = smallYard({ temperatures: [{ from: '2027-01-01', celsius: 10 }] });
    expect(measuredStrips(piece({ day: 1, minutes: 137 }), cold)[0]).toMatchObject({ demouldMinutes: 76, coldest: 10 });
    expect(measuredStrips(piece({ day: 1, minutes: 137, air: 20 }), cold)[0]?.demouldMinutes).toBe(137);
  });

  test('refines how much cold slows the mix, where cold and warm days are told apart', () => {
    // 180 minutes at 10 °C and 90 at 20 °C are 5753 K, as `mixRate` has it.
    const days = [
      ...[1, 2, 3].map((day) => ({ day, minutes: 180, air: 10 })),
      ...[4, 5, 6].map((day) => ({ day, minutes: 90, air: 20 })),
    ];
    const [thin] = measuredStrips(days.flatMap(piece), smallYard());
    expect(thin).toMatchObject({ count: 6, activationKelvin: 5753, coldest: 10, warmest: 20 });
    expect(thin?.demouldMinutes).toBe(91);
    expect(measuredStrips(days.slice(0, 5).flatMap(piece), smallYard())[0]?.activationKelvin).toBe(5000);
  });
});
