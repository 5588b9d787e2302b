import { quoteRows } from './quotes.ts';
import { speedRows } from './speed.ts';
import { print } from './table.ts';

/** Timings of the engine, run as it is built (`as-built.ts`); which, the command says. */
const sections: Record<string, () => void> = {
  speed: () => print('Speed, as built, in process, warm, medians', speedRows()),
  quote: () => print('Quotes, as built, in process, warm, medians', quoteRows()),
};

sections[process.argv[2] ?? '']?.();
