import type { Context, Hono } from 'hono';
import { CastingForm, MIX_FIRST } from '../../views/yard/casting-form.tsx';
import { CASTINGS, CastingsPage } from '../../views/yard/castings-page.tsx';
import { addCastings, editCasting } from '../usecases/yard/edit-casting.ts';
import { removeEntry } from '../usecases/yard/remove-entry.ts';
import { showYardCastings, type YardCasting, type YardCastingsModel } from '../usecases/yard/show-yard-castings.ts';
import { readForm } from './form.ts';
import { effectFirst } from './form-route.tsx';
import type { Screens } from './screens.ts';
import { type Entries, effectOn, type Section, sectionRoutes } from './section-routes.tsx';
import { typedInAddress, withWayBack } from './way-back.ts';

const section: Section<YardCastingsModel> = {
  path: CASTINGS,
  load: showYardCastings,
  list: (model, notice) => ({ title: 'What you cast', content: <CastingsPage model={model} notice={notice} /> }),
};

const addressOf = (c: Context): string => {
  const { pathname, search } = new URL(c.req.url);
  return pathname + search;
};

const castings: Entries<YardCastingsModel, YardCasting> = {
  path: CASTINGS,
  of: (model) => model.castings,
  form: ({ c, entry, state, ...shown }) => {
    // Come back to from a new mix, it is filled in as it was left.
    const filled = state.typed || entry ? state : { ...state, typed: typedInAddress(c) };
    const content = <CastingForm {...shown} entry={entry} state={filled} address={addressOf(c)} />;
    return { title: entry?.name ?? 'Add what you cast', content };
  },
  add: effectFirst(addCastings),
  edit: effectOn(editCasting),
  remove: effectOn((id) => removeEntry('casting', id)),
  called: (casting) => casting?.name ?? 'this piece',
};

/** What is cast: panels by length, with size, weight and the work on each. */
export const yardCastingRoutes = (screens: Screens): Hono =>
  sectionRoutes(screens, section, castings).post(MIX_FIRST, async (c) =>
    c.redirect(withWayBack('/yard/mixes/new', `${CASTINGS}/new`, await readForm(c)), 303),
  );
