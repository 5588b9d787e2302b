import type { Context, Hono } from 'hono';
import { GUESSES, GuessesPage } from '../../views/guesses/guesses-page.tsx';
import type { UseCaseContext } from '../usecases/core/context.ts';
import { confirmGuess } from '../usecases/yard/confirm-guess.ts';
import { showGuesses } from '../usecases/yard/show-guesses.ts';
import { type Deed, deedRoutes } from './deed-routes.ts';
import { doneNotice } from './notice.ts';
import { page } from './page.tsx';
import type { Screens } from './screens.ts';

type Refused = Parameters<Parameters<typeof deedRoutes>[3]>[2];

const guessesPage = async (c: Context, context: UseCaseContext, refused: Refused) => {
  const model = await showGuesses(context);
  const content = <GuessesPage model={model} notice={await doneNotice(c, context)} errors={refused?.errors ?? {}} />;
  const frame = { title: 'Guesses', at: 'yard', yardName: model.yardName } as const;
  return page(c, frame, content, { status: refused ? 422 : 200 });
};

const DEEDS: Readonly<Record<string, Deed>> = {
  right: {
    act: (context, { kind = '', figure = '' }) => confirmGuess(context, { kind, figure }),
    form: ({ figure }) => figure ?? '',
  },
};

export const guessRoutes = (screens: Screens): Hono => deedRoutes(screens, GUESSES, DEEDS, guessesPage);
