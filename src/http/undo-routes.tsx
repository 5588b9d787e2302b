import { Hono } from 'hono';
import { PlainPage } from '../../views/plain/plain-page.tsx';
import { undoChange } from '../usecases/changes/undo-change.ts';
import { wholeTyped } from '../usecases/typed/form-fields.ts';
import { readForm } from './form.ts';
import { ownPath, page, seeDone } from './page.tsx';
import type { Screens } from './screens.ts';

export const undoRoutes = ({ context }: Screens): Hono => {
  const routes = new Hono();
  routes.post('/undo', async (c) => {
    const typed = await readForm(c);
    const back = ownPath(typed.back);
    const outcome = await undoChange(context(), wholeTyped(typed.change) ?? 0);
    if (outcome.ok) return seeDone(c, back, outcome.value.change);
    const refused = (
      <PlainPage happened="That can't be undone." back={back}>
        {outcome.faults.map((fault) => fault.message).join(' ')}
      </PlainPage>
    );
    return page(c, { title: "Can't be undone" }, refused, { status: 409 });
  });
  return routes;
};
