import { type Context, Hono } from 'hono';
import type { Outcome, UseCaseContext } from '../usecases/core/context.ts';
import type { Changed } from '../usecases/plan/changing.ts';
import type { FormFields } from '../usecases/typed/form-fields.ts';
import { errorsByField, readForm } from './form.ts';
import { seeDone } from './page.tsx';
import type { Screens } from './screens.ts';

export type Done = Promise<Outcome<Changed<unknown>>>;

/** One thing that can be done from a page that has a form for each. */
export interface Deed {
  act(context: UseCaseContext, typed: FormFields): Done;
  /** Which form of the page it was. */
  form(typed: FormFields): string;
}

/** A form that was refused: which one, what is wrong at each field, and all that was typed. */
interface Refused {
  form: string;
  errors: ReturnType<typeof errorsByField>;
  typed: FormFields;
}

/** A page at a path, and a form at `path/name` for each deed: done, it leads back; refused, the page says why. */
export const deedRoutes = (
  { context }: Screens,
  path: string,
  deeds: Readonly<Record<string, Deed>>,
  show: (c: Context, context: UseCaseContext, refused: Refused | null) => Promise<Response>,
): Hono => {
  const routes = new Hono();
  routes.get(path, (c) => show(c, context(), null));
  routes.post(`${path}/:deed`, async (c) => {
    const deed = deeds[c.req.param('deed')];
    if (!deed) return c.notFound();
    const [now, typed] = [context(), await readForm(c)];
    const outcome = await deed.act(now, typed);
    if (outcome.ok) return seeDone(c, path, outcome.value.change, typed);
    return show(c, now, { form: deed.form(typed), errors: errorsByField(outcome.faults), typed });
  });
  return routes;
};
