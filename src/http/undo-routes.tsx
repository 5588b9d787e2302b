import type { Hono } from 'hono';
import { PlainPage } from '../../views/plain/plain-page.tsx';
import { undoChange } from '../usecases/changes/undo-change.ts';
import { done } from '../usecases/core/context.ts';
import { wholeTyped } from '../usecases/typed/form-fields.ts';
import { atOnce, type FormRoute, formRoute } from './form-route.tsx';
import { ownPath } from './page.tsx';
import type { Screens } from './screens.ts';

const undo: FormRoute<unknown> = {
  path: '/undo',
  save: atOnce(({ change }) => done(wholeTyped(change) ?? 0), undoChange),
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
