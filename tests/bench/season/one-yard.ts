/** Run as a process of its own: a season of one yard by its name, printed as one line of JSON. */
import { appendFileSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { handSeason } from './hand-season.ts';
import { readCall } from './options.ts';
import { runSeason } from './run-season.ts';
import { SEASON_YARDS } from './season-yards.ts';
import type { YardSeason } from './yard-season.ts';

const call = readCall(process.argv.slice(2));
const yard = SEASON_YARDS.find(({ name }) => name === call.yards[0]);
if (!yard) throw new Error(`There is no yard ${call.yards[0]}.`);
const { logs } = call;
if (logs) mkdirSync(logs, { recursive: true });
const log = (line: string) => logs && appendFileSync(join(logs, `${yard.name}.log`), `${line}\n`);
const lived = await runSeason(yard, call, log);
const season: YardSeason = {
  program: lived.tally,
  byHand: [0, 1, 2, 3].map((inHand) => handSeason(lived, yard.from, call.days, inHand)),
};
console.log(JSON.stringify(season));
