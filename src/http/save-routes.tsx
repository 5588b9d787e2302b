import type { Context } from 'hono';
import { Hono } from 'hono';
import { RemovePage } from '../../views/yard/remove.tsx';
import type { UseCaseContext } from '../usecases/core/context.ts';
import type { Edit, FormState } from '../usecases/plan/save-edit.ts';
import { saveEdit } from '../usecases/plan/save-edit.ts';
import type { FormFields } from '../usecases/typed/form-fields.ts';
import { showYardFrame } from '../usecases/yard/show-yard-frame.ts';
import { errorsByField, readForm } from './form.ts';
import { page, seeDone } from './page.tsx';
import type { Screens } from './screens.ts';

/**
 * A form that is shown at its address and saved by sending it there. `show` answers with the page that has the form in
 * the state it is given. Saved, it leads to `after`; refused, or about to move dates, it comes back with all that was typed.
 *
 * Example: { path: '/yard/moulds/:mould', show: mouldPage, edit: (c, typed) => editMould(c.req.param('mould'), typed),
 * after: () => '/yard/moulds' }.
 */
export interface SaveForm<T> {
  path: string;
  show(c: Context, context: UseCaseContext, state: FormState): Response | Promise<Response>;
  edit(c: Context, typed: FormFields): Edit<T>;
  after(c: Context, value: T): string;
}

const BLANK: FormState = { typed: null, errors: {}, effect: null };

/** Both routes of a form. */
export const saveForm = <T,>({ context }: Screens, { path, show, edit, after }: SaveForm<T>): Hono => {
  const routes = new Hono();
  routes.get(path, (c) => show(c, context(), BLANK));
  routes.post(path, async (c) => {
    const [now, typed] = [context(), await readForm(c)];
    const saved = await saveEdit(now, edit(c, typed), typed.seen);
    if (saved.kind === 'saved') return seeDone(c, after(c, saved.value), saved.change, typed);
    const told = { errors: {}, effect: null, ...(saved.kind === 'moves' ? { effect: saved.effect } : {}) };
    const errors = saved.kind === 'refused' ? errorsByField(saved.faults) : {};
    return show(c, now, { ...told, typed, errors });
  });
  return routes;
};

/** How a page with a form answers: 422 where something was wrong. */
export const formStatus = ({ errors }: FormState) => ({
  status: Object.keys(errors).length > 0 ? (422 as const) : (200 as const),
});

interface Removal<T> {
  /** '/yard/moulds/:mould/remove' */
  path: string;
  edit(c: Context): Edit<T>;
  /** What it is called. */
  name(c: Context, context: UseCaseContext): string | Promise<string>;
  /** Where it leads, done or not. */
  back(c: Context): string;
  instead?: string;
}

/** Takes an entry away at once; where something uses it (a fault at `uses`), or dates would move, a page says so. */
export const removal = <T,>(screens: Screens, { path, edit, name, back, instead }: Removal<T>): Hono =>
  saveForm(screens, {
    path,
    edit,
    after: back,
    show: async (c, context, state) => {
      const { yardName, today } = await showYardFrame(context);
      const { uses = null } = state.errors;
      const asked = {
        name: await name(c, context),
        action: new URL(c.req.url).pathname,
        back: back(c),
        ...(instead ? { instead } : {}),
      };
      const content = <RemovePage {...asked} state={state} today={today} uses={uses} />;
      return page(c, { title: `Remove ${asked.name}`, at: 'yard', yardName }, content, formStatus(state));
    },
  });
