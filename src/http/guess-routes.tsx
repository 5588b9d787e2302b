import type { Hono } from 'hono';
import { GUESSES, GuessesPage } from '../../views/guesses/guesses-page.tsx';
import { done } from '../usecases/core/context.ts';
import { confirmGuess } from '../usecases/yard/confirm-guess.ts';
import { showGuesses } from '../usecases/yard/show-guesses.ts';
import { atOnce, type FormRoute, formRoute, pageRoute, type Show } from './form-route.tsx';
import { doneNotice } from './notice.ts';
import type { Screens } from './screens.ts';

const guessesPage: Show = async (c, context, { errors }) => {
  const model = await showGuesses(context);
  const frame = { title: 'Figures to check', at: 'yard', yardName: model.yardName } as const;
  return { frame, content: <GuessesPage model={model} notice={await doneNotice(c, context)} errors={errors} /> };
};

const right: FormRoute<unknown> = {
  path: `${GUESSES}/right`,
  save: atOnce(({ kind = '', figure = '' }) => done({ kind, figure }), confirmGuess),
  show: guessesPage,
  next: () => GUESSES,
};

export const guessRoutes = (screens: Screens): Hono =>
  pageRoute(screens, GUESSES, guessesPage).route('/', formRoute(screens, right));
