import type { Context, Hono } from 'hono';
import type { UseCaseContext } from '../usecases/core/context.ts';
import type { RefusedForm } from '../usecases/plan/save-edit.ts';
import type { FormFields } from '../usecases/typed/form-fields.ts';
import { type FormRoute, formRoute, pageRoute, type Show, type Shown } from './form-route.tsx';
import type { Screens } from './screens.ts';

/** One form of a page that has several: what it does, and which of them it is, for the fault to stand there. */
export interface PageForm {
  save: FormRoute<unknown>['save'];
  form(fields: FormFields, c: Context): string;
}

interface FormsOnPage {
  /** The page: '/today'. */
  path: string;
  /** What the addresses of its forms begin with, where that is another: '/moulds/:id'. */
  under?: string;
  show(c: Context, context: UseCaseContext, refused: RefusedForm | null): Promise<Shown | null>;
  next(c: Context): string;
}

/** A page at a path, and a form at `path/name` for each of `forms`. Done, it leads back; refused, or asked about first, the page says so. */
export const formsOnPage = (
  screens: Screens,
  { path, under = path, show, next }: FormsOnPage,
  forms: Readonly<Record<string, PageForm>>,
): Hono => {
  const routes = pageRoute(screens, path, (c, context) => show(c, context, null));
  for (const [name, { save, form }] of Object.entries(forms)) {
    const refused: Show = (c, context, { typed, errors, effect }) =>
      show(c, context, { form: form(typed ?? {}, c), errors, effect, typed: typed ?? {} });
    routes.route('/', formRoute(screens, { path: `${under}/${name}`, show: refused, save, next }));
  }
  return routes;
};
