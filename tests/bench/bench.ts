import { cpus } from 'node:os';
import { accessibilityRows } from './accessibility.ts';
import { runAsBuilt } from './as-built.ts';
import { bestRows } from './best.ts';
import { buyingRows, tripRows } from './buying.ts';
import { calibrationRows } from './calibration/calibration.ts';
import { csvRows } from './csv.ts';
import { cutRows } from './cut.ts';
import { earliestBench } from './earliest/earliest.ts';
import { EXACT_SEEDS, exactRows, exactSummary } from './exact.ts';
import { questionBench } from './exact-questions.ts';
import { firefoxRows } from './firefox.ts';
import { heightRows } from './heights.ts';
import { htmlRows } from './html.ts';
import { ifFirstRows } from './if-first.ts';
import { lighthouseRows } from './lighthouse.ts';
import { meshRows } from './mesh.ts';
import { oddsRows, oddsSpeedRows } from './odds.ts';
import { PAGES_YARDS, pageRows } from './pages/pages.ts';
import { plainerRows } from './plainer.ts';
import { qualityRows } from './quality.ts';
import { remoteChangeRows, remoteLossRows } from './remote/remote.ts';
import { REQUEST_YARDS, requestRows } from './requests.ts';
import { seasonBench } from './season/season-bench.ts';
import { shuffledRows } from './shuffled.ts';
import { print } from './table.ts';
import { tardinessRows } from './tardiness.ts';
import { tortureRows } from './torture/torture.ts';

/** Every tenth tardiness instance by default; all 250 with `npm run bench -- tardiness all`, or `thorough` for that effort. */
const SOME = 10;

/** Random yards of `npm run bench -- first`, `shuffled`, `odds` and `plainer`; any other number after it. */
const SOME_YARDS = 200;

/** Yards of `npm run bench -- calibration`; any other number after it. */
const SOME_LIVED = 40;

/** Random cut lists of `npm run bench -- cut`; any other number after it. */
const SOME_CASES = 40;

/** Yards of each kind of `npm run bench -- best`, and seconds for each; any other two numbers after it. */
const SOME_OF_A_KIND = 12;
const SOME_SECONDS = 600;

/** Acts of `npm run bench -- torture`; any other number after it. */
const SOME_ACTS = 1000;

const sections: Record<string, (argument?: string, ...more: string[]) => void | Promise<void>> = {
  speed: () => runAsBuilt('./timings.ts', 'speed'),
  quote: () => runAsBuilt('./timings.ts', 'quote'),
  buying: async () => {
    print('Trips, in process, warm, medians', buyingRows());
    print('Ways to suppliers a month, the orders of twelve weeks', await tripRows());
  },
  csv: async () => print('5,000 rows of a CSV, in process, once', await csvRows()),
  quality: (effort) =>
    print('Weighted days late against the whiteboard', qualityRows(effort === 'normal' ? 'normal' : 'quick')),
  best: (yards, seconds) =>
    print(
      `Weighted days late against the best found in ${seconds ?? SOME_SECONDS} seconds a yard`,
      bestRows(Number(yards ?? SOME_OF_A_KIND), Number(seconds ?? SOME_SECONDS)),
    ),
  tardiness: (which) =>
    print(
      'Weighted tardiness, OR-Library wt40 and wt50',
      tardinessRows(which === undefined ? SOME : 1, which === 'thorough' ? 'thorough' : 'normal'),
    ),
  cut: async (cases) => print('Sticks against proven optima', await cutRows(Number(cases ?? SOME_CASES))),
  mesh: (effort) =>
    print('Mesh against published guillotine optima', meshRows(effort === 'thorough' ? 'thorough' : 'usual')),
  first: (yards) => print('First before all others', ifFirstRows(Number(yards ?? SOME_YARDS))),
  shuffled: (yards) => print('Lists in another order', shuffledRows(Number(yards ?? SOME_YARDS))),
  plainer: (yards, from) =>
    print('Plainer plans against the answer', plainerRows(Number(yards ?? SOME_YARDS), Number(from ?? 0))),
  odds: (yards) => {
    print('Odds of a date, in process, warm, medians', oddsSpeedRows());
    print('Days said with odds, and how often they were kept', oddsRows(Number(yards ?? SOME_YARDS)));
  },
  calibration: (yards, first, only, breaks, file) =>
    print(
      'Promises by odds, lived through',
      calibrationRows(Number(yards ?? SOME_LIVED), {
        ...{ first: Number(first ?? 0), only, breaks: breaks === 'breaks', file },
      }),
    ),
  requests: async (only) => {
    for (const [orders, moulds] of REQUEST_YARDS.filter(([orders]) => !only || orders === Number(only)))
      print(`Longest blocks of requests, ${orders} orders, a search beside`, await requestRows(orders, moulds));
  },
  pages: async (only, path) => {
    for (const [orders, moulds] of PAGES_YARDS.filter(([orders]) => !only || orders === Number(only)))
      print(`Pages, ${orders === 0 ? 'the demo' : `${orders} orders`}`, await pageRows(orders, moulds, path));
  },
  remote: async () => {
    print('Changes and pages by a server, 80 ms away', await remoteChangeRows());
    print('Writers at once by a server', await remoteLossRows());
  },
  accessibility: async () => print('Errors of a second accessibility checker', await accessibilityRows()),
  firefox: async (only) => print('The main jobs in Firefox', await firefoxRows(only)),
  heights: async (folder, only) => print('How high pages are', await heightRows(folder, only)),
  html: async () => print('Pages as a checker of HTML reads them', await htmlRows()),
  lighthouse: async (only) =>
    print('Lighthouse: performance, accessibility, best practices', await lighthouseRows(only)),
  season: (...words) => seasonBench(words.filter((word) => word !== undefined)),
  earliest: (...words) => earliestBench(words.filter((word) => word !== undefined)),
  torture: async (acts) =>
    print('Random acts on a running server that is killed', await tortureRows(Number(acts ?? SOME_ACTS))),
  question: (yards, seconds) => questionBench(yards ? Number(yards) : undefined, seconds ? Number(seconds) : undefined),
  exact: async () => {
    console.log('\nAgainst proven optima, small yards, MIP in HiGHS, 60 s each');
    for (const line of exactSummary(await exactRows(EXACT_SEEDS))) console.log(`  ${line}`);
  },
};

/** Each takes minutes, or a quarter of an hour and more, by itself: only when it is named. */
const BY_NAME_ONLY = new Set([
  'accessibility',
  'best',
  'calibration',
  'earliest',
  'exact',
  'firefox',
  'heights',
  'html',
  'lighthouse',
  'pages',
  'question',
  'remote',
  'season',
  'shuffled',
  'torture',
]);

const [name, ...argument] = process.argv.slice(2);
console.log(`${cpus().length} × ${cpus()[0]?.model ?? 'unknown processor'}, Node ${process.version}`);
if (name === undefined) {
  for (const [title, section] of Object.entries(sections)) if (!BY_NAME_ONLY.has(title)) await section();
} else if (sections[name]) await sections[name](...argument);
else {
  console.error(`no section named "${name}"; there are ${Object.keys(sections).join(', ')}`);
  process.exit(2);
}
