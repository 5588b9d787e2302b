import type { HandTally } from './hand-season.ts';
import type { YardSeason } from './yard-season.ts';

type Row = Record<string, string>;

const COLUMNS = [
  ...[
    'yard',
    'kept',
    'told no',
    'false no',
    'days ahead',
    'told before',
    'avoidable',
    'alarms',
    'nearer',
    'later',
    'days later',
  ],
  ...['orders a month', 'ways a month', 'no stick', 'past date'],
  ...['overnight', 'faults', 'vanished', 'refused', 'by hand 0', '1', '2', '3 in hand', 'seconds'],
] as const;

const MONTH_DAYS = 30.4;

const aMonth = (count: number, days: number): string => (days === 0 ? '-' : ((count * MONTH_DAYS) / days).toFixed(1));

const mean = (values: readonly number[]): string =>
  values.length === 0 ? '-' : (values.reduce((sum, value) => sum + value, 0) / values.length).toFixed(1);

const total = (counts: Readonly<Record<string, number>>): number =>
  Object.values(counts).reduce((sum, count) => sum + count, 0);

/** "31/34 12.4": kept of those that fell due, and the days ahead they were told. */
const handText = ({ kept, due, quotedDays }: HandTally): string => `${kept}/${due} ${mean(quotedDays)}`;

export const rowOf = ({ program: p, byHand }: YardSeason): Row => {
  const [none, one, two, three] = byHand.map(handText);
  return {
    ...{ yard: p.yard, kept: `${p.kept}/${p.due}`, 'told no': String(p.toldNo), 'false no': String(p.falseNo) },
    ...{ 'days ahead': mean(p.quotedDays), 'told before': mean(p.tellingDays), avoidable: String(p.avoidable) },
    ...{ alarms: String(p.alarms), nearer: String(p.forward) },
    ...{ later: String(total(p.moves)), 'days later': String(p.movedDays) },
    ...{ 'orders a month': aMonth(p.bought, p.days), 'ways a month': aMonth(p.ways, p.days) },
    ...{ 'no stick': String(p.cutsOfNone), 'past date': String(p.pastDate) },
    ...{ overnight: `${p.changedPours} in ${p.nights}`, faults: `${p.auditFaults} in ${p.audits}` },
    ...{ vanished: String(p.vanished), refused: String(p.refused.length), seconds: String(p.seconds) },
    ...{ 'by hand 0': none ?? '', '1': one ?? '', '2': two ?? '', '3 in hand': three ?? '' },
  };
};

const handSum = (seasons: readonly YardSeason[], place: number): HandTally => {
  const hands = seasons.flatMap(({ byHand }) => byHand[place] ?? []);
  const sum = (of: (hand: HandTally) => number) => hands.reduce((n, hand) => n + of(hand), 0);
  return {
    ...{ due: sum(({ due }) => due), kept: sum(({ kept }) => kept), toldNo: sum(({ toldNo }) => toldNo) },
    ...{ quotedDays: hands.flatMap(({ quotedDays }) => quotedDays), sessionsInHand: place },
  };
};

/** All yards together. */
export const sumOf = (seasons: readonly YardSeason[]): Row => {
  const all = seasons.map(({ program }) => program);
  const sum = (of: (tally: (typeof all)[number]) => number) => all.reduce((n, tally) => n + of(tally), 0);
  const [first] = all;
  if (!first) return {};
  const program = {
    ...{ ...first, yard: 'all', kept: sum((x) => x.kept), due: sum((x) => x.due), toldNo: sum((x) => x.toldNo) },
    ...{ falseNo: sum((x) => x.falseNo), avoidable: sum((x) => x.avoidable), alarms: sum((x) => x.alarms) },
    ...{ forward: sum((x) => x.forward) },
    ...{ quotedDays: all.flatMap((x) => x.quotedDays), tellingDays: all.flatMap((x) => x.tellingDays) },
    ...{ moves: { all: sum((x) => total(x.moves)) }, movedDays: sum((x) => x.movedDays), nights: sum((x) => x.nights) },
    ...{
      changedPours: sum((x) => x.changedPours),
      audits: sum((x) => x.audits),
      auditFaults: sum((x) => x.auditFaults),
    },
    ...{ bought: sum((x) => x.bought), ways: sum((x) => x.ways), days: sum((x) => x.days) },
    ...{ cutsOfNone: sum((x) => x.cutsOfNone), pastDate: sum((x) => x.pastDate) },
    ...{ vanished: sum((x) => x.vanished), refused: all.flatMap((x) => x.refused), seconds: sum((x) => x.seconds) },
  };
  return rowOf({ program, byHand: [0, 1, 2, 3].map((place) => handSum(seasons, place)) });
};

export const printTable = (rows: readonly Row[]): void => {
  const widths = COLUMNS.map((name) => Math.max(name.length, ...rows.map((row) => (row[name] ?? '').length)));
  const line = (cells: readonly string[]) =>
    cells
      .map((cell, i) => cell.padEnd(widths[i]!))
      .join('  ')
      .trimEnd();
  console.log(`\n${line(COLUMNS)}`);
  for (const row of rows) console.log(line(COLUMNS.map((name) => row[name] ?? '')));
};

const counted = (counts: Readonly<Record<string, number>>): string =>
  Object.entries(counts)
    .filter(([, count]) => count > 0)
    .map(([name, count]) => `${count} ${name}`)
    .join(', ') || 'none';

/** What a yard's row leaves out: moves by act, faults by rule, every miss, and every act refused in the program's words. */
export const detailLines = ({ program: p }: YardSeason): string[] => [
  `${p.yard}: ${p.orders} orders, kept ${p.kept} of ${p.due}; moved later: ${counted(p.moves)}, nearer: ${p.forward}; faults: ${counted(p.auditWords)}; late work tapped ${p.lateTaps} times, ${p.givenUp} given up; ${p.searches} searches`,
  ...p.misses.map((miss) => `  missed ${miss}`),
  ...p.refused.map(({ at, status, act, words }) => `  refused ${at} ${status} ${act.slice(0, 160)}: ${words}`),
];
