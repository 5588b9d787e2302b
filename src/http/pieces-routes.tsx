import type { Context, Hono } from 'hono';
import { KEPT } from '../../views/pieces/kept-ready.tsx';
import { PIECES, PiecesPage } from '../../views/pieces/pieces-page.tsx';
import type { UseCaseContext } from '../usecases/core/context.ts';
import { countFinished, finishedTyped } from '../usecases/pieces/count-finished.ts';
import { keepReady, keptTyped } from '../usecases/pieces/keep-ready.ts';
import { showPieces } from '../usecases/pieces/show-pieces.ts';
import type { RefusedForm } from '../usecases/plan/save-edit.ts';
import { atOnce } from './form-route.tsx';
import { formsOnPage } from './forms-on-page.tsx';
import { doneNotice } from './notice.ts';
import type { Screens } from './screens.ts';

const piecesPage = async (c: Context, context: UseCaseContext, refused: RefusedForm | null) => {
  const model = await showPieces(context);
  const frame = { title: 'Pieces in the yard', at: 'moulds', yardName: model.yardName, place: 'yard' } as const;
  return { frame, content: <PiecesPage model={model} notice={await doneNotice(c, context)} refused={refused} /> };
};

/** The finished pieces, and counting them. */
export const piecesRoutes = (screens: Screens): Hono =>
  formsOnPage(
    screens,
    { path: PIECES, show: piecesPage, next: () => PIECES },
    {
      counted: { save: atOnce(finishedTyped, countFinished), form: ({ casting = '' }) => casting },
      [KEPT]: { save: atOnce(keptTyped, keepReady), form: () => KEPT },
    },
  );
