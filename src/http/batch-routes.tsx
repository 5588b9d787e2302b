import type { Context, Hono } from 'hono';
import type { BatchKey } from '../../shared/batch-record.ts';
import { BatchPage } from '../../views/trace/batch-page.tsx';
import { batchPath } from '../../views/trace/batch-path.ts';
import { showBatch } from '../usecases/trace/show-batch.ts';
import { batchTold, tellBatch } from '../usecases/trace/tell-batch.ts';
import { wholeTyped } from '../usecases/typed/form-fields.ts';
import { atOnce, type FormRoute, formPage, type Show, withDays } from './form-route.tsx';
import { doneNotice } from './notice.ts';
import type { Screens } from './screens.ts';

const keyOf = (c: Context): BatchKey => ({
  minute: wholeTyped(c.req.param('minute')) ?? 0,
  mould: c.req.param('mould') ?? '',
});

const show: Show = async (c, context, state) => {
  const model = await showBatch(context, keyOf(c));
  if (!model) return null;
  const frame = { title: `Batch in ${model.key.mould}`, at: 'moulds', yardName: model.yardName } as const;
  return { frame, content: <BatchPage model={model} notice={await doneNotice(c, context)} state={state} /> };
};

const telling: FormRoute<unknown> = {
  path: '/batch/:minute/:mould',
  show,
  save: atOnce(withDays(batchTold), (context, told, c) => tellBatch(context, keyOf(c), told)),
  next: (c) => batchPath(keyOf(c)),
};

/** The page of a batch, with what is told of it. */
export const batchRoutes = (screens: Screens): Hono => formPage(screens, telling);
