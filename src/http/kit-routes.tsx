import type { Context, Hono } from 'hono';
import { KitBySizePage, KitBySizePart } from '../../views/kits/kit-by-size-page.tsx';
import { BY_SIZE } from '../../views/kits/kit-form.tsx';
import { CASTINGS } from '../../views/yard/castings-page.tsx';
import { addKitBySize } from '../usecases/kits/add-kit-by-size.ts';
import { showKitBySize } from '../usecases/kits/show-kit-by-size.ts';
import type { FormFields } from '../usecases/typed/form-fields.ts';
import { KIT_FIELDS } from '../usecases/typed/kit-size-form.ts';
import { asSent, atOnce, type FormRoute, formPage, type Show } from './form-route.tsx';
import { doneNotice } from './notice.ts';
import { wantsPart } from './page.tsx';
import type { Screens } from './screens.ts';

/** Of sizes; which panels are meant is said by a name of the yard and two measures. */
const LONGEST_VALUE = 120;

/** The fields of the address, trimmed; only those of the form. */
const queried = (c: Context): FormFields =>
  Object.fromEntries(
    KIT_FIELDS.flatMap((name): [string, string][] => {
      const value = c.req.query(name);
      return value === undefined ? [] : [[name, value.trim().slice(0, LONGEST_VALUE)]];
    }),
  );

/** The size again as an address, to come back to it. */
const addressOf = (typed: FormFields): string => {
  const query = KIT_FIELDS.flatMap((name): [string, string][] => (typed[name] ? [[name, typed[name]]] : []));
  return `${BY_SIZE}?${new URLSearchParams(query)}`;
};

const kitPage: Show = async (c, context, { typed: sent, errors }) => {
  const typed = sent ?? queried(c);
  const model = await showKitBySize(context, typed);
  const props = { model, errors, typed };
  if (wantsPart(c))
    return { frame: { title: 'Kit by size' }, content: <KitBySizePart {...props} notice={null} />, status: 200 };
  const unread = model.form !== null && model.faults.length > 0;
  return {
    frame: { title: 'Kit by size', at: 'orders', yardName: model.yardName },
    content: <KitBySizePage {...props} notice={await doneNotice(c, context)} />,
    ...(unread ? { status: 422 } : {}),
  };
};

const adding: FormRoute<{ id: string }> = {
  path: BY_SIZE,
  show: kitPage,
  save: atOnce(asSent, addKitBySize),
  next: (_c, kit, typed) =>
    kit && typed.next === 'ask' ? `/?${new URLSearchParams({ what: `kit:${kit.id}`, number: '1' })}` : addressOf(typed),
};

export const kitRoutes = (screens: Screens): Hono =>
  formPage(screens, adding)
    // Sizes are written down with the rest of a piece. This address is on old bookmarks.
    .get('/kits/panels', (c) => c.redirect(CASTINGS, 301));
