import type { Keep, PlanPour } from '../../../shared/plan.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { coatsBefore } from '../../engine/book/coat-before.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import { lessPours } from '../../engine/standing/less-pours.ts';
import { fixedPlan, mixesOf } from './fixed-plan.ts';

type Fixing = Parameters<typeof fixedPlan>[0];

/**
 * Pours for orders that are gone, and for nobody, out of sessions that are not fixed: nobody waits for them. What is to stand
 * ready in the yard is planned behind everything each time.
 */
const withoutGone = (keep: Keep, fixed: Keep, yard: YardFile): Keep => {
  const orders = new Set(yard.orders.map(({ id }) => id));
  const stays = new Set(fixed.batches.map(({ id, start }) => `${id} ${start}`));
  const { instantText } = calendarOf(yard.yard.timeZone);
  const mixes = mixesOf(keep).flatMap((mix) => {
    if (stays.has(`${mix.batch.id} ${mix.batch.start}`)) return [mix];
    const gone = new Set(mix.pours.filter(({ order }) => order === undefined || !orders.has(order)));
    if (gone.size === mix.pours.length) return [];
    return [gone.size === 0 ? mix : lessPours(mix, gone, instantText)];
  });
  const pours = mixes.flatMap((mix) => mix.pours);
  const coats = coatsBefore(keep.coats ?? [], pours, pours);
  return { batches: mixes.map(({ batch }) => batch), pours, ...(coats.length > 0 ? { coats } : {}) };
};

/** What stands, with what is fixed of it as that is fixed: looked at for all sessions, some of it would begin later. */
const asFixed = ({ batches, pours, ...rest }: Keep, fixed: Keep): Keep => {
  const ids = new Set(fixed.batches.map(({ id }) => id));
  return {
    ...rest,
    batches: [...fixed.batches, ...batches.filter(({ id }) => !ids.has(id))],
    pours: [...fixed.pours, ...pours.filter(({ batch }) => !ids.has(batch))],
  };
};

/** Hours that reach beyond any plan of a yard. */
const allHours = ({ yard }: YardFile): number => (yard.horizonDays + 2) * 24;

/**
 * All pours of the plan that stands which can still be made, as the moulds stand now, those for orders that are gone left
 * out, with the coats before them, and the strips and packings that are to come; what is fixed of it stays as it is. Null before there is a plan.
 */
export const standingPours = (fixing: Fixing, fixed: Keep): Keep | null => {
  const { yard, plan } = fixing;
  if (!plan) return null;
  const orders = new Map(plan.pours.map(({ id, order }) => [id, order]));
  // What a pour is for is known by the plan; carrying it forward takes the names of orders that are gone away.
  const all = fixedPlan({ ...fixing, hours: allHours(yard), searchedUntil: Number.POSITIVE_INFINITY });
  const keep = asFixed(all.keep, fixed);
  const named = {
    ...keep,
    pours: keep.pours.map((pour): PlanPour => {
      const order = pour.order ?? orders.get(pour.id);
      return order === undefined ? pour : { ...pour, order };
    }),
  };
  const left = withoutGone(named, fixed, yard);
  const open = new Set(yard.orders.map(({ id }) => id));
  const pours = left.pours.map(({ order, ...pour }) =>
    order !== undefined && open.has(order) ? { ...pour, order } : pour,
  );
  const stays = new Set([...pours, ...(yard.begun?.pours ?? [])].map(({ id }) => id));
  const strips = keep.strips?.filter(({ pour }) => pour === undefined || stays.has(pour));
  return { ...left, pours, strips, packs: keep.packs };
};
