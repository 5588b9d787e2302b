import { listText } from '../../shared/list-text.ts';
import { countText } from '../../shared/plural.ts';
import type { StickFacts } from '../../src/usecases/today/cut-list.ts';
import type { EveningFacts } from '../../src/usecases/today/evening-facts.ts';
import type { AmountFacts, BatchStep, CoatStep, PrepStep } from '../../src/usecases/today/session-step.ts';
import { fromClock } from '../parts/clock-text.ts';
import { weekdayName } from '../parts/day-text.ts';
import { quantityText } from '../parts/quantity-text.ts';
import { ofText } from './slip-text.ts';
import { amountOfText } from './today-text.ts';

/** "Before Saturday: cut 12 lengths, weigh out for 6 mixes, set up 3 moulds." */
export const eveningAnswer = ({ session, sticks, coats, preps, steps }: EveningFacts): string => {
  const lengths = sticks.flatMap(({ cuts }) => cuts).reduce((sum, { count }) => sum + count, 0);
  const mixes = steps.filter(({ kind }) => kind === 'batch').length;
  const work = [
    ...(lengths > 0 ? [`cut ${countText(lengths, 'length')}`] : []),
    ...(mixes > 0 ? [`weigh out for ${countText(mixes, 'mix', 'mixes')}`] : []),
    ...(coats.length > 0 ? [`coat ${countText(coats.length, 'mould')}`] : []),
    ...(preps.length > 0 ? [`set up ${countText(preps.length, 'mould')}`] : []),
  ];
  return `Before ${weekdayName(session.date)}: ${work.length > 0 ? listText(work) : 'nothing to get ready'}.`;
};

/** "; keep 2232 mm", or of what nothing can be cut from "; 45 mm is over". */
const leftText = ({ left }: StickFacts): string =>
  left === null ? '' : left.isKept ? `; keep ${left.length}` : `; ${left.length} is over`;

/** "Sleeve pipe 20 mm, a whole one: 8 × 190 mm and 2 × 300 mm; keep 856 mm" */
export const stickLine = (stick: StickFacts): string => {
  const { name, length, whole, cuts } = stick;
  const pieces = listText(cuts.map((cut) => `${cut.count} × ${cut.length}`));
  return `${name}, ${whole ? 'a whole one' : `an offcut of ${length}`}: ${pieces}${leftText(stick)}`;
};

const isBatch = (step: EveningFacts['steps'][number]): step is BatchStep => step.kind === 'batch';

/** "5 mixes of Thin panel mix, 1 bag: 57 g of Citric acid", alike ones together; what is counted is laid out, not weighed. */
export const weighLines = ({ steps }: Pick<EveningFacts, 'steps'>): string[] => {
  const alike = new Map<string, { batch: BatchStep; count: number }>();
  for (const batch of steps.filter(isBatch)) {
    const key = `${batch.bags} ${batch.mix}`;
    alike.set(key, { batch, count: (alike.get(key)?.count ?? 0) + 1 });
  }
  return [...alike.values()].flatMap(({ batch, count }) => {
    const weighed = [...batch.ingredients.filter(({ measured }) => measured !== null).map(ofText)];
    const water = batch.water ? [`${batch.water} of water`] : [];
    if (weighed.length + water.length === 0) return [];
    const each = count > 1 ? ' each' : '';
    const what = `${countText(count, 'mix', 'mixes')} of ${batch.mix}, ${quantityText(batch.bags, 'bag')}${each}`;
    return [`${what}: ${listText([...water, ...weighed])}`];
  });
};

/** "0.16 m² of Mesh for each of 4 × Panel 900": what is cut to a piece, once for all that are alike. */
export const fittingLines = ({ steps }: Pick<EveningFacts, 'steps'>): string[] => {
  const pours = steps.filter(isBatch).flatMap((batch) => batch.pours);
  const each = new Map<string, readonly AmountFacts[]>();
  for (const step of steps) if (step.kind === 'prep') each.set(step.casting, step.fittings);
  return [...each].flatMap(([casting, fittings]) => {
    const own = pours.filter((pour) => pour.casting === casting);
    if (fittings.length === 0 || own.length === 0) return [];
    return [`${listText(fittings.map(amountOfText))} for each of ${own.length} × ${own[0]!.piece}`];
  });
};

/** What has to be dry, and by when: the set-up of that mould. */
export const dryLines = ({ coats, steps }: Pick<EveningFacts, 'coats' | 'steps'>): string[] =>
  coats.map((coat: CoatStep) => {
    const after = steps.find(
      (step): step is PrepStep =>
        step.kind === 'prep' && step.mould === coat.mould && Date.parse(step.at) >= Date.parse(coat.until),
    );
    const minutes = Math.round((Date.parse(coat.dryFrom) - Date.parse(coat.until)) / 60_000);
    const dries = `${coat.mould}: its coat dries for ${minutes} min`;
    return after ? `${dries}; it is set up at ${fromClock(after.at)}` : dries;
  });
