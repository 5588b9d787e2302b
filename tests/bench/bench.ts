import { cpus } from 'node:os';
import { qualityRows } from './quality.ts';
import { quoteRows } from './quotes.ts';
import { speedRows } from './speed.ts';
import { print } from './table.ts';
import { tardinessRows } from './tardiness.ts';

/** Every tenth tardiness instance by default; all 250 with `npm run bench -- tardiness all`. */
const SOME = 10;

const sections: Record<string, (argument?: string) => void> = {
  speed: () => print('Speed, in process, warm, medians', speedRows()),
  quote: () => print('Quotes, in process, warm, medians', quoteRows()),
  quality: (effort) =>
    print('Weighted days late against the whiteboard', qualityRows(effort === 'normal' ? 'normal' : 'quick')),
  tardiness: (which) =>
    print('Weighted tardiness, OR-Library wt40 and wt50', tardinessRows(which === 'all' ? 1 : SOME)),
};

const [name, argument] = process.argv.slice(2);
console.log(`${cpus().length} × ${cpus()[0]?.model ?? 'unknown processor'}, Node ${process.version}`);
if (name === undefined) for (const section of Object.values(sections)) section();
else if (sections[name]) sections[name](argument);
else {
  console.error(`no section named "${name}"; there are ${Object.keys(sections).join(', ')}`);
  process.exit(2);
}
