/** One row of the bench: what was measured, the figure, and what it is measured against. */
export interface Row {
  what: string;
  figure: string;
  aim: string;
}

export const median = (values: number[]): number => {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)]!;
};

/** Milliseconds of each run, after some that are not counted: the compiler has to have seen the code. */
export const timed = (runs: number, warm: number, work: () => void): number[] => {
  for (let i = 0; i < warm; i++) work();
  return Array.from({ length: runs }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  });
};

export const ms = (value: number): string => (value < 10 ? `${value.toFixed(1)} ms` : `${Math.round(value)} ms`);

/** What was found on pages, told once for each rule that finds it: how often, and where first. */
export const foundRows = (what: string, all: readonly { rule: string; where: string }[]): Row[] => {
  const byRule = new Map<string, { count: number; first: string }>();
  for (const { rule, where } of all) {
    const before = byRule.get(rule);
    byRule.set(rule, { count: (before?.count ?? 0) + 1, first: before?.first ?? where });
  }
  return [
    { what, figure: `${all.length} found`, aim: 'aim: none' },
    ...[...byRule].map(([rule, { count, first }]) => ({ what: `  ${rule}`, figure: `${count}`, aim: first })),
  ];
};

export const print = (title: string, rows: Row[]): void => {
  console.log(`\n${title}`);
  const widths = (['what', 'figure', 'aim'] as const).map((key) => Math.max(...rows.map((row) => row[key].length)));
  for (const row of rows)
    console.log(`  ${row.what.padEnd(widths[0]!)}  ${row.figure.padEnd(widths[1]!)}  ${row.aim}`.trimEnd());
};
