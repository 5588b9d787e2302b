import type { UseCaseContext } from '../usecases/core/context.ts';

/** What the routes of a screen get: the context of a use case, made anew for each request. */
export interface Screens {
  context: () => UseCaseContext;
}
