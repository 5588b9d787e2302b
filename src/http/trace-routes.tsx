import { type Context, Hono } from 'hono';
import { TracePage } from '../../views/trace/trace-page.tsx';
import { TRACE } from '../../views/trace/trace-text.ts';
import { showTrace } from '../usecases/trace/show-trace.ts';
import { traceTable } from '../usecases/trace/trace-table.ts';
import { TRACE_FIELDS, type TraceTyped } from '../usecases/typed/trace-form.ts';
import { page } from './page.tsx';
import { saveFile } from './save-file.ts';
import type { Screens } from './screens.ts';

const LONGEST_VALUE = 120;

/** What is asked in the address, trimmed; only the fields that there are. */
const asked = (c: Context): TraceTyped =>
  Object.fromEntries(
    TRACE_FIELDS.flatMap((name): [string, string][] => {
      const value = c.req.query(name)?.trim().slice(0, LONGEST_VALUE);
      return value ? [[name, value]] : [];
    }),
  );

/** Where pieces came from and where they went, as a page and as a table. */
export const traceRoutes = ({ context }: Screens): Hono =>
  new Hono()
    .get(TRACE, async (c) => {
      const typed = asked(c);
      const model = await showTrace(context(), typed);
      const frame = { title: 'Where it came from, where it went', at: 'moulds', yardName: model.yardName } as const;
      const status = Object.keys(model.errors).length > 0 ? 422 : 200;
      return page(c, frame, <TracePage model={model} typed={typed} />, { status });
    })
    .get(`${TRACE}.csv`, async (c) => saveFile(c, await traceTable(context(), asked(c))));
