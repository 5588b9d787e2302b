import { expect, test } from 'vitest';
import { filesUnder } from '../support/source-files.ts';

/** Every place in src/http that takes a POST: the file, and how often. */
const taken = (): Record<string, number> =>
  Object.fromEntries(
    filesUnder('src/http').flatMap(({ path, text }) => {
      const count = text.match(/\.post\(/g)?.length ?? 0;
      return count > 0 ? [[path.replace('src/http/', ''), count]] : [];
    }),
  );

/* DEVELOPERS.md, "Forms", gives the reason of each that stands beside the builder. */
test('a form is taken by the one builder, or is one of those that are named', () => {
  expect(taken()).toEqual({
    'api-routes.tsx': 1,
    'calendar-routes.tsx': 2,
    'device-routes.tsx': 1,
    'form-route.tsx': 1,
    'file-routes.tsx': 2,
    'first-owner-routes.tsx': 1,
    'first-routes.tsx': 1,
    'order-form-routes.tsx': 1,
    'own-password-routes.tsx': 4,
    'people-routes.tsx': 4,
    'piece-routes.tsx': 1,
    'sign-in-routes.tsx': 5,
    'yard-casting-routes.tsx': 1,
    'yard-weather-found-routes.tsx': 2,
  });
});
