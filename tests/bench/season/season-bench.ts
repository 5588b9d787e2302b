import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { fileURLToPath } from 'node:url';
import { readCall, type SeasonCall, wordsOf } from './options.ts';
import { detailLines, printTable, rowOf, sumOf } from './season-table.ts';
import { SEASON_YARDS } from './season-yards.ts';
import type { YardSeason } from './yard-season.ts';

const SCRIPT = fileURLToPath(new URL('./one-yard.ts', import.meta.url));

/** A season of one yard in a process of its own, so that two run beside each other. */
const seasonOf = async (yard: string, call: SeasonCall): Promise<YardSeason> => {
  const args = ['--import', 'tsx', SCRIPT, ...wordsOf({ ...call, yards: [yard] })];
  const child = spawn(process.execPath, args, { stdio: ['ignore', 'pipe', 'inherit'] });
  let said = '';
  child.stdout.setEncoding('utf8').on('data', (text: string) => {
    said += text;
  });
  const [code] = await once(child, 'close');
  if (code !== 0) throw new Error(`the season of ${yard} ended with ${code}`);
  return JSON.parse(said) as YardSeason;
};

/** Seasons of the yards asked for, so many at a time; told each as it ends. */
const allSeasons = async (call: SeasonCall, tell: (season: YardSeason) => void): Promise<YardSeason[]> => {
  const names = SEASON_YARDS.map(({ name }) => name).filter(
    (name) => call.yards.length === 0 || call.yards.includes(name),
  );
  const left = [...names];
  const seasons = new Map<string, YardSeason>();
  const work = async () => {
    for (let name = left.shift(); name !== undefined; name = left.shift()) {
      const season = await seasonOf(name, call);
      seasons.set(name, season);
      tell(season);
    }
  };
  await Promise.all(Array.from({ length: call.jobs }, work));
  return names.flatMap((name) => seasons.get(name) ?? []);
};

const BY_HAND =
  '\nBy hand, with 0 to 3 sessions in hand: the same customers, rejects, lost days, broken moulds, changed minds and late days of delivery; ordered on the day of a promise is all that the plan then needs.';

/** `npm run bench -- season`: seasons in closed loop through the program's own pages, beside the planner by hand. */
export const seasonBench = async (words: readonly string[]): Promise<void> => {
  const call = readCall(words);
  const { days, seed, search, disturbed } = call;
  console.log(`\nSeasons of ${days} days, seed ${seed}, search ${search}, ${disturbed ? 'disturbed' : 'undisturbed'}`);
  const seasons = await allSeasons(call, (season) => {
    for (const line of detailLines(season)) console.log(line);
  });
  console.log(BY_HAND);
  printTable([...seasons.map(rowOf), sumOf(seasons)]);
};
