import { readFileSync } from 'node:fs';
import { readYardFile, type YardFile } from '../../shared/yard-file.ts';
import { cutPlan } from '../../src/engine/cut/cut-plan.ts';
import { compile } from '../../src/engine/decoder/compile.ts';
import { decode } from '../../src/engine/decoder/decode.ts';
import { decoderStateOf } from '../../src/engine/decoder/decoder-state.ts';
import { dispatchOf } from '../../src/engine/decoder/dispatch.ts';
import { planYard } from '../../src/engine/plan.ts';
import { startSequences } from '../../src/engine/search/quick.ts';
import { manyCuts } from '../support/many-cuts.ts';
import { randomYard } from '../support/random-yard.ts';
import { scaledYard } from '../support/scaled-yard.ts';
import { median, ms, type Row, timed } from './table.ts';

export const exampleYard = (): YardFile => {
  const file = new URL('../contract/example.yard.json', import.meta.url);
  const read = readYardFile(JSON.parse(readFileSync(file, 'utf8')));
  if (!read.ok) throw new Error('the example yard has faults');
  return read.yard;
};

const decodeRow = (orders: number, moulds: number, aim: string): Row => {
  const problem = compile(scaledYard(orders, moulds));
  const dispatch = dispatchOf(startSequences(problem)[0]!);
  const state = decoderStateOf(problem, dispatch);
  const times = timed(21, 5, () => decode(state, dispatch));
  return { what: `one decode, ${state.placed.pours} pours, ${moulds} moulds`, figure: ms(median(times)), aim };
};

const planRow = (what: string, yard: YardFile, effort: 'quick' | 'normal', runs: number, aim: string): Row => ({
  what: `${what}, ${effort}`,
  figure: ms(median(timed(runs, effort === 'quick' ? 5 : 1, () => planYard(yard, { effort })))),
  aim,
});

const cutRow = (): Row => {
  const cuts = manyCuts();
  const times = timed(11, 3, () => cutPlan({ stickMm: 3000, kerfMm: 3 }, cuts));
  return { what: '3,000 cuts of 6 lengths', figure: ms(median(times)), aim: 'under 100 ms' };
};

/** How fast, in process, warm: medians. */
export const speedRows = (): Row[] => {
  const small = scaledYard(100, 20);
  const large = scaledYard(1000, 200);
  const quick = (yard: YardFile) => median(timed(5, 1, () => planYard(yard, { effort: 'quick' })));
  const [a, b] = [quick(small), quick(large)];
  const largest = scaledYard(5000, 1000, { pieces: 12 });
  const c = median(timed(1, 1, () => planYard(largest, { effort: 'quick' })));
  return [
    decodeRow(130, 26, 'under 15 ms'),
    decodeRow(1000, 200, 'under 150 ms'),
    cutRow(),
    planRow('example yard', exampleYard(), 'quick', 21, 'under 20 ms'),
    planRow('typical yard of 8 to 15 orders', randomYard(1001, 'typical'), 'quick', 11, 'under 20 ms'),
    planRow('example yard', exampleYard(), 'normal', 3, 'under 2 s'),
    planRow('130 orders, 1,700 pours', scaledYard(130, 26), 'normal', 3, 'under 2 s'),
    { what: '1,000 orders, 13,000 pours, quick', figure: ms(b), aim: 'under 2 s' },
    { what: 'growth from 100 to 1,000 orders, quick', figure: `${(b / a).toFixed(1)} times`, aim: 'at most 15 times' },
    { what: '5,000 orders, 60,000 pours, quick', figure: ms(c), aim: 'under 4 s' },
    { what: 'growth from 1,000 to 5,000 orders, quick', figure: `${(c / b).toFixed(1)} times`, aim: 'at most 6 times' },
    { what: 'memory after that', figure: `${Math.round(process.memoryUsage().rss / 2 ** 20)} MB`, aim: 'under 400 MB' },
  ];
};
