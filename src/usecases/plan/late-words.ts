import type { LateStep } from './late-steps.ts';

const counted = (count: number, one: string): string => (count === 1 ? `1 ${one}` : `${count} ${one}s`);

/** How many of each there are among the steps. */
const countsOf = (steps: readonly LateStep[]) => {
  const of = (kind: LateStep['kind']): number => steps.filter((step) => step.kind === kind).length;
  const pours = steps.reduce((sum, step) => sum + (step.kind === 'batch' ? step.mix.pours.length : 0), 0);
  return { pours, strips: of('strip'), coats: of('coat'), preps: of('prep'), packs: of('pack') };
};

/** "4 pieces poured, 3 stripped, 1 order packed": what late work comes to, each thing after a word where one is wanted. */
export const lateWords = (steps: readonly LateStep[], not = ''): string => {
  const { pours, strips, coats, preps, packs } = countsOf(steps);
  return [
    ...(pours > 0 ? [`${counted(pours, 'piece')} ${not}poured`] : []),
    ...(strips > 0 ? [`${pours > 0 ? strips : counted(strips, 'piece')} ${not}stripped`] : []),
    ...(coats > 0 ? [`${counted(coats, 'mould')} ${not}coated`] : []),
    ...(preps > 0 ? [`${counted(preps, 'mould')} ${not}set up`] : []),
    ...(packs > 0 ? [`${counted(packs, 'order')} ${not}packed`] : []),
  ].join(', ');
};
