import type { Hono } from 'hono';
import { CASTINGS } from '../../views/yard/castings-page.tsx';
import { MixForm } from '../../views/yard/mix-form.tsx';
import { MixStrengthPage } from '../../views/yard/mix-strength-page.tsx';
import { MIXES, MixesPage } from '../../views/yard/mixes-page.tsx';
import { addOneMix, editMix } from '../usecases/yard/edit-mix.ts';
import { removeEntry } from '../usecases/yard/remove-entry.ts';
import { isCement, showMixStrength } from '../usecases/yard/show-mix-strength.ts';
import { showYardMixes, type YardMix, type YardMixesModel } from '../usecases/yard/show-yard-mixes.ts';
import { effectFirst, pageRoute, type Show } from './form-route.tsx';
import type { Screens } from './screens.ts';
import { type Entries, effectOn, type Section, sectionRoutes } from './section-routes.tsx';
import { wayBack } from './way-back.ts';

const section: Section<YardMixesModel> = {
  path: MIXES,
  load: showYardMixes,
  list: (model, notice) => ({ title: 'Mixes', content: <MixesPage model={model} notice={notice} /> }),
};

const mixes: Entries<YardMixesModel, YardMix> = {
  path: MIXES,
  of: (model) => model.mixes,
  form: ({ model, entry, state, c }) => {
    const from = state.typed ? state.typed.from : c.req.query('from');
    const preset = entry ? null : (model.presets.find(({ key }) => key === from) ?? null);
    const content = <MixForm model={model} mix={entry} preset={preset} state={state} back={wayBack(c, CASTINGS)} />;
    return { title: entry?.name ?? 'Add a mix', content };
  },
  add: effectFirst(addOneMix),
  edit: effectOn(editMix),
  remove: effectOn((id) => removeEntry('mix', id)),
  called: (mix) => mix?.name ?? 'this mix',
  afterAdding: (c) => wayBack(c, CASTINGS) ?? MIXES,
};

/** How strong a piece is by then; a cement that nobody knows is asked for again. */
const strengthPage: Show = async (c, context) => {
  const cement = c.req.query('cement');
  const model = await showMixStrength(context, c.req.param('mix') ?? '', isCement(cement) ? cement : null);
  if (!model) return null;
  const frame = { title: `How strong ${model.mix.name} is`, at: 'yard', yardName: model.yardName } as const;
  return { frame, content: <MixStrengthPage model={model} /> };
};

/** What is mixed: from one bag on, and how it hardens. */
export const yardMixRoutes = (screens: Screens): Hono =>
  sectionRoutes(screens, section, mixes).route('/', pageRoute(screens, `${MIXES}/:mix/strength`, strengthPage));
