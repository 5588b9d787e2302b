import type { Hono } from 'hono';
import { PlainPage } from '../../views/plain/plain-page.tsx';
import { undoChange } from '../usecases/changes/undo-change.ts';
import { done } from '../usecases/core/context.ts';
import { wholeTyped } from '../usecases/typed/form-fields.ts';
import { atOnce, type FormRoute, formRoute } from './form-route.tsx';
import { ownPath } from './page.tsx';
import type { Screens } from './screens.ts';
import { personAt } from './signed-in.ts';

const undo: FormRoute<unknown> = {
  path: '/undo',
  // Whoever works in the yard takes back what they did themselves, and nothing of others.
  save: atOnce(
    ({ change }) => done(wholeTyped(change) ?? 0),
    (context, change, c) => undoChange(context, change, { ownOnly: personAt(c)?.role === 'yard' }),
  ),
  next: (_c, _value, { back }) => ownPath(back),
  show: async (_c, _context, { errors, typed }) => ({
    frame: { title: "Can't be undone" },
    content: (
      <PlainPage happened="That can't be undone." back={ownPath(typed?.back)}>
        {Object.values(errors).join(' ')}
      </PlainPage>
    ),
    status: 409,
  }),
};

export const undoRoutes = (screens: Screens): Hono => formRoute(screens, undo);
