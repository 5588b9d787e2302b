import type { Context } from 'hono';
import { Hono } from 'hono';
import { KitBySizePage, KitBySizePart } from '../../views/kits/kit-by-size-page.tsx';
import { BY_SIZE } from '../../views/kits/kit-form.tsx';
import { CASTINGS } from '../../views/yard/castings-page.tsx';
import type { UseCaseContext } from '../usecases/core/context.ts';
import { addKitBySize } from '../usecases/kits/add-kit-by-size.ts';
import { showKitBySize } from '../usecases/kits/show-kit-by-size.ts';
import type { FormFields } from '../usecases/typed/form-fields.ts';
import { KIT_FIELDS } from '../usecases/typed/kit-size-form.ts';
import { errorsByField, readForm } from './form.ts';
import { doneNotice } from './notice.ts';
import { page, seeDone, wantsPart } from './page.tsx';
import type { Screens } from './screens.ts';

const LONGEST_VALUE = 60;

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

const kitPage = async (c: Context, context: UseCaseContext, typed: FormFields, errors: Record<string, string> = {}) => {
  const model = await showKitBySize(context, typed);
  const props = { model, errors, typed };
  const wrong = Object.keys(errors).length > 0 || (model.form !== null && model.faults.length > 0);
  if (wantsPart(c)) return page(c, { title: 'Kit by size' }, <KitBySizePart {...props} notice={null} />);
  const content = <KitBySizePage {...props} notice={await doneNotice(c, context)} />;
  return page(c, { title: 'Kit by size', at: 'orders', yardName: model.yardName }, content, {
    status: wrong ? 422 : 200,
  });
};

export const kitRoutes = ({ context }: Screens): Hono => {
  const routes = new Hono();
  routes.get(BY_SIZE, (c) => kitPage(c, context(), queried(c)));
  routes.post(BY_SIZE, async (c) => {
    const typed = await readForm(c);
    const outcome = await addKitBySize(context(), typed);
    if (!outcome.ok) return kitPage(c, context(), typed, errorsByField(outcome.faults));
    const { value, change } = outcome.value;
    const asking = `/?${new URLSearchParams({ what: `kit:${value.id}`, number: '1' })}`;
    return seeDone(c, typed.next === 'ask' ? asking : addressOf(typed), change);
  });
  // Sizes are written down with the rest of a piece. This address is on old bookmarks.
  routes.get('/kits/panels', (c) => c.redirect(CASTINGS, 301));
  return routes;
};
