import { dateOfDay, dayNumber } from '../../shared/time.ts';
import type { YardFile } from '../../shared/yard-file.ts';

/** The yard with one more window of work for one person, on one of the next six days by the seed. */
export const withWindow = (yard: YardFile, seed: number, start: string, end: string): YardFile => {
  const date = dateOfDay(dayNumber(yard.yard.now.slice(0, 10)) + 1 + (seed % 6));
  const allows: YardFile['extra'][number]['allows'] = ['prep', 'batch', 'strip', 'pack'];
  return { ...yard, extra: [...yard.extra, { date, start, end, crew: 1, allows }] };
};

/** The yard with one more of every material in it. */
export const withMaterials = (yard: YardFile): YardFile => ({
  ...yard,
  materials: yard.materials.map((one) => ({ ...one, onHand: one.onHand + 1 })),
});

/** The yard with one more rack space; none where the rack has no limit. */
export const withRackSpace = (yard: YardFile): YardFile[] => {
  const { rackSpaces } = yard.yard;
  return rackSpaces === undefined ? [] : [{ ...yard, yard: { ...yard.yard, rackSpaces: rackSpaces + 1 } }];
};
