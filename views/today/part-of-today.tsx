import type { FC } from 'hono/jsx';
import { type ListPart, listPart } from '../../shared/list-part.ts';
import type { SessionStep } from '../../src/usecases/today/session-step.ts';
import type { TodayModel } from '../../src/usecases/today/today-model.ts';
import { OtherParts } from '../parts/other-parts.tsx';

/** What a step weighs on the page: a batch has a line and two fields for each of its moulds. */
const weightOf = (step: SessionStep): number => (step.kind === 'batch' ? 2 + step.pours.length : 1);

interface PartSize<T> {
  /** What the address calls the list. */
  list: string;
  most: number;
  weigh?: (item: T) => number;
  /** Which one of it a form that came back is of; it is on the page whatever was asked for. */
  isMine?: (item: T) => boolean;
}

/** The part of a list that is on the page: the one that was asked for, of all other lists the first. */
export const partOfToday = <T,>(
  { part: asked }: Pick<TodayModel, 'part'>,
  items: readonly T[],
  { list, isMine = () => false, ...size }: PartSize<T>,
): ListPart<T> => {
  const mine = items.findIndex(isMine);
  return listPart(items, mine >= 0 ? mine : asked.list === list ? asked.from : 0, size);
};

/** The same of steps, each of which has forms of its own. */
export const stepsOfToday = (
  model: Pick<TodayModel, 'part'>,
  steps: readonly SessionStep[],
  size: Omit<PartSize<SessionStep>, 'most' | 'weigh'>,
): ListPart<SessionStep> => partOfToday(model, steps, { ...size, most: STEPS_WEIGHT, weigh: weightOf });

/** So many steps with a form are on the page of each list, or batches of as many moulds. */
const STEPS_WEIGHT = 12;

/** Whether somebody went on in a list: then it is unfolded. */
export const isGoneOnIn = ({ part }: Pick<TodayModel, 'part'>, list: string): boolean => part.list === list;

/** The address of a part. */
export const partOfTodayPath = (list: string, from: number): string =>
  `/today?${new URLSearchParams({ list, from: String(from) })}`;

/** The same, at the place of its list on the page. */
export const atPartOfToday = (list: string, from: number): string => `${partOfTodayPath(list, from)}#${list}`;

/** The way to the other parts of a list. */
export const OtherPartsOfToday: FC<{ list: string; part: ListPart<unknown>; what?: string; many?: string }> = ({
  list,
  part,
  what = 'step',
  many = `${what}s`,
}) => <OtherParts part={part} what={what} many={many} href={(from) => atPartOfToday(list, from)} />;
