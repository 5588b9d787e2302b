import { type Context, Hono } from 'hono';
import type { Child } from 'hono/jsx';
import type { DoneNotice } from '../../views/parts/notice.tsx';
import { RemovePage } from '../../views/yard/remove.tsx';
import type { UseCaseContext } from '../usecases/core/context.ts';
import type { Edit, FormState } from '../usecases/plan/save-edit.ts';
import type { FormFields } from '../usecases/typed/form-fields.ts';
import { showYardFrame } from '../usecases/yard/show-yard-frame.ts';
import { effectFirst, formPage, pageRoute, type Save, type Show } from './form-route.tsx';
import { doneNotice } from './notice.ts';
import type { Screens } from './screens.ts';

interface TitledContent {
  title: string;
  content: Child;
}

/** What the form of an entry is drawn from; `entry` is null while it is added. */
interface EntryForm<Model, Entry> {
  model: Model;
  entry: Entry | null;
  state: FormState;
  notice: DoneNotice | null;
  c: Context;
}

/** One kind of entry of a section: its form is at `path/new` and `path/:id`, and `path/:id/remove` takes it away. */
export interface Entries<Model, Entry> {
  path: string;
  of(model: Model): readonly Entry[];
  form(drawn: EntryForm<Model, Entry>): TitledContent;
  add: Save<unknown>;
  edit: Save<unknown>;
  remove: Save<unknown>;
  /** What the page that says it has to stay calls it. */
  called(entry: Entry | null, id: string): string;
  /** What can be done where it has to stay. */
  instead?: string;
  /** Where adding one leads, if not to the list. */
  afterAdding?(c: Context): string;
}

/** A section of "Your yard": its page at `path`, and the entries it lists. `list` is left out where the page is a form. */
export interface Section<Model> {
  path: string;
  load(context: UseCaseContext): Promise<Model>;
  list?(model: Model, notice: DoneNotice | null): TitledContent;
}

interface YardModel {
  yardName: string;
}

const shown = ({ yardName }: YardModel, { title, content }: TitledContent) => ({
  frame: { title, at: 'yard', yardName } as const,
  content,
});

const entryId = (c: Context): string => c.req.param('id') ?? '';

/** Changes the entry that the address names, its effect shown first: `effectOn(editMould)`. */
export const effectOn = <T,>(edit: (id: string, fields: FormFields) => Edit<T>): Save<T> =>
  effectFirst((fields, c) => edit(entryId(c), fields));

interface Removal {
  path: string;
  save: Save<unknown>;
  called(c: Context, context: UseCaseContext): Promise<string>;
  back: string;
  instead?: string | undefined;
}

/** Takes an entry away; where something uses it (a fault at `uses`), or dates would move, a page says so. */
export const removeRoutes = (screens: Screens, { path, save, called, back, instead }: Removal): Hono => {
  const show: Show = async (c, context, state) => {
    const frame = await showYardFrame(context);
    const name = await called(c, context);
    const asked = { name, state, back, today: frame.today, action: new URL(c.req.url).pathname };
    const content = <RemovePage {...asked} uses={state.errors.uses ?? null} {...(instead ? { instead } : {})} />;
    return shown(frame, { title: `Remove ${name}`, content });
  };
  return formPage(screens, { path, show, save, next: () => back });
};

/** The form, the saving and the removal of one kind of entry. */
export const entryRoutes = <Model extends YardModel, Entry extends { id: string | number }>(
  screens: Screens,
  { path: list, load }: Section<Model>,
  entries: Entries<Model, Entry>,
): Hono => {
  const { path, of, form, add, edit, remove, called, instead, afterAdding } = entries;
  const entryOf = (model: Model, id: string) => of(model).find((one) => String(one.id) === id) ?? null;
  const drawn = async (c: Context, context: UseCaseContext, state: FormState, id: string | null) => {
    const model = await load(context);
    const entry = id === null ? null : entryOf(model, id);
    if (id !== null && !entry) return null;
    return shown(model, form({ model, entry, state, notice: await doneNotice(c, context), c }));
  };
  const adding = formPage(screens, {
    path: `${path}/new`,
    show: (c, context, state) => drawn(c, context, state, null),
    save: add,
    next: (c) => afterAdding?.(c) ?? list,
  });
  const editing = formPage(screens, {
    path: `${path}/:id`,
    show: (c, context, state) => drawn(c, context, state, entryId(c)),
    save: edit,
    next: () => list,
  });
  const removing = removeRoutes(screens, {
    path: `${path}/:id/remove`,
    save: remove,
    called: async (c, context) => called(entryOf(await load(context), entryId(c)), entryId(c)),
    ...{ back: list, instead },
  });
  return new Hono().route('/', adding).route('/', editing).route('/', removing);
};

/** The page of a section. */
const listRoute = <Model extends YardModel>(screens: Screens, { path, load, list }: Section<Model>): Hono =>
  pageRoute(screens, path, async (c, context) => {
    const model = await load(context);
    return list ? shown(model, list(model, await doneNotice(c, context))) : null;
  });

/** A section of the yard with one kind of entry: list, form, save, remove. */
export const sectionRoutes = <Model extends YardModel, Entry extends { id: string | number }>(
  screens: Screens,
  section: Section<Model>,
  ...kinds: Entries<Model, Entry>[]
): Hono => {
  const routes = new Hono();
  if (section.list) routes.route('/', listRoute(screens, section));
  for (const entries of kinds) routes.route('/', entryRoutes(screens, section, entries));
  return routes;
};
