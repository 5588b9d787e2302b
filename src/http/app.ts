import { type Context, Hono } from 'hono';
import { bodyLimit } from 'hono/body-limit';
import { trimTrailingSlash } from 'hono/trailing-slash';
import type { FirstCode } from '../usecases/access/first-owner.ts';
import type { Background, UseCaseContext } from '../usecases/core/context.ts';
import { allowedMethods } from './allowed-methods.ts';
import { isApiPath, problem } from './api/problem.ts';
import { apiRoutes } from './api-routes.tsx';
import { assetRoutes } from './assets.ts';
import { batchRoutes } from './batch-routes.tsx';
import { beginRoutes } from './begin-routes.tsx';
import { buyingRoutes } from './buying-routes.tsx';
import { calendarRoutes } from './calendar-routes.tsx';
import { changeRoutes } from './change-routes.tsx';
import { compressed } from './compressed.ts';
import { dayRoutes } from './day-routes.tsx';
import { deviceRoutes } from './device-routes.tsx';
import { fault, foreign, missing, notByThis, tooLarge } from './failures.tsx';
import { fileLimit, fileRoutes, isFilePath } from './file-routes.tsx';
import { finished, finishing } from './finished.ts';
import { firstOwnerRoutes } from './first-owner-routes.tsx';
import { firstRoutes } from './first-routes.tsx';
import { goesWrongRoutes } from './goes-wrong-routes.tsx';
import { sameOrigin, securityHeaders } from './guard.ts';
import { guessRoutes } from './guess-routes.tsx';
import { healthRoutes } from './health-routes.ts';
import { putInItsEnglish } from './in-its-english.ts';
import { keptPages } from './kept-pages.ts';
import { kitRoutes } from './kit-routes.tsx';
import { measuredRoutes } from './measured-routes.tsx';
import { mouldRoutes } from './mould-routes.tsx';
import { noSignalRoute } from './no-signal-route.tsx';
import { orderFormRoutes } from './order-form-routes.tsx';
import { orderRoutes } from './order-routes.tsx';
import { addressAt, type Door, ONE_DESK, ownNamesOnly } from './own-names.ts';
import { ownPasswordRoutes } from './own-password-routes.tsx';
import { peopleRoutes } from './people-routes.tsx';
import { isPhotoPath, photoLimit, pieceRoutes } from './piece-routes.tsx';
import { piecesRoutes } from './pieces-routes.tsx';
import { priceRoutes } from './price-routes.tsx';
import { faultsOnly, type Log, named, requestLog } from './request-log.ts';
import type { Screens } from './screens.ts';
import { seasonRoutes } from './season-routes.tsx';
import { seeServerAway } from './server-away.ts';
import { sheetRoutes } from './sheet-routes.tsx';
import { notYours, signInFirst, signInRoutes } from './sign-in-routes.tsx';
import { signedInOnly } from './signed-in.ts';
import { stockRoutes } from './stock-routes.tsx';
import { streamRoute } from './stream-route.ts';
import { todayRoutes } from './today-routes.tsx';
import { traceRoutes } from './trace-routes.tsx';
import { countedTries } from './tries.ts';
import { turnsRoutes } from './turns-routes.tsx';
import { mountedAt, putUnderPath } from './under-path.ts';
import { undoRoutes } from './undo-routes.tsx';
import { walkRoutes } from './walk-routes.tsx';
import { yardCastingRoutes } from './yard-casting-routes.tsx';
import { yardHoursRoutes } from './yard-hours-routes.tsx';
import { yardKitRoutes } from './yard-kit-routes.tsx';
import { yardMixRoutes } from './yard-mix-routes.tsx';
import { yardMouldRoutes } from './yard-mould-routes.tsx';
import { yardRoutes } from './yard-routes.tsx';
import { yardStockRoutes } from './yard-stock-routes.tsx';
import { yardSupplierRoutes } from './yard-supplier-routes.tsx';
import { yardTemperatureRoutes } from './yard-temperature-routes.tsx';
import { yardWeatherFoundRoutes } from './yard-weather-found-routes.tsx';
import { yardWeatherRoutes } from './yard-weather-routes.tsx';

export interface AppParts {
  database: UseCaseContext['database'];
  /** The clock: the present instant, in whole minutes. */
  now: () => string;
  background?: Background;
  /** Where photos are kept; nowhere without it. */
  photos?: UseCaseContext['photos'];
  /** Where forecasts are asked for; nowhere without it. */
  forecast?: UseCaseContext['forecast'];
  /** How it is reached; as it is given, by the machine itself alone. */
  door?: Door;
  /** Of the code that was shown at the start, where nobody is there yet who could let anybody in. */
  firstCode?: FirstCode | null;
  /** Who is told of every request; without it faults are told as text. */
  log?: Log | undefined;
}

const LARGEST_FORM_BYTES = 100_000;

/** Every route of a screen, in one list: a screen is added here and nowhere else. */
const SCREEN_ROUTES: readonly ((screens: Screens) => Hono)[] = [
  firstRoutes,
  beginRoutes,
  guessRoutes,
  measuredRoutes,
  goesWrongRoutes,
  orderFormRoutes,
  orderRoutes,
  kitRoutes,
  mouldRoutes,
  piecesRoutes,
  pieceRoutes,
  priceRoutes,
  seasonRoutes,
  traceRoutes,
  batchRoutes,
  buyingRoutes,
  stockRoutes,
  walkRoutes,
  yardRoutes,
  yardMouldRoutes,
  yardCastingRoutes,
  yardKitRoutes,
  yardMixRoutes,
  yardStockRoutes,
  yardSupplierRoutes,
  yardHoursRoutes,
  yardTemperatureRoutes,
  yardWeatherRoutes,
  yardWeatherFoundRoutes,
  sheetRoutes,
  todayRoutes,
  streamRoute,
  turnsRoutes,
  calendarRoutes,
  changeRoutes,
  deviceRoutes,
  dayRoutes,
  fileRoutes,
  undoRoutes,
  healthRoutes,
  signInRoutes,
  firstOwnerRoutes,
  ownPasswordRoutes,
  peopleRoutes,
  apiRoutes,
];

type Answering<More extends unknown[]> = (c: Context, ...more: More) => Response | Promise<Response>;

/** Programs are answered with a problem where people are with a page. */
const orProblem =
  <More extends unknown[]>(status: number, shown: Answering<More>): Answering<More> =>
  (c, ...more) =>
    isApiPath(c.req.path) ? problem(c, status) : shown(c, ...more);

/** The whole of Mould Rota behind one request handler. */
export const createApp = (parts: AppParts): Hono => {
  const { database, now, background, photos, forecast } = parts;
  const { door = ONE_DESK, log = faultsOnly, firstCode = null } = parts;
  const app = new Hono();
  const screens: Screens = {
    context: () => ({
      database,
      now: now(),
      ...(background ? { background } : {}),
      ...(photos ? { photos } : {}),
      ...(forecast ? { forecast } : {}),
    }),
    isSecure: door.publicAddress?.startsWith('https:') ?? false,
    addressOf: (c, path) => addressAt(c, path, door),
    firstCode,
    tries: countedTries(),
    path: door.path,
  };
  app.use(named(), requestLog(log));
  app.use(securityHeaders(door.publicAddress));
  // Pages and assets shrink to a fifth or a tenth; nothing on them is a secret that is guessed at by their length.
  app.use(compressed());
  const finish = finishing(
    (c) => putInItsEnglish(c, screens.context()),
    (c) => putUnderPath(c, door.path),
  );
  app.use(finished(finish));
  app.use(ownNamesOnly(door));
  app.use(sameOrigin(door.publicAddress, orProblem(403, foreign)));
  app.use(trimTrailingSlash());
  const formLimit = bodyLimit({ maxSize: LARGEST_FORM_BYTES, onError: orProblem(413, tooLarge) });
  const limitOf = (path: string) => (isFilePath(path) ? fileLimit : isPhotoPath(path) ? photoLimit : formLimit);
  app.use((c, next) => limitOf(c.req.path)(c, next));
  if (!door.isOneDesk)
    app.use(
      signedInOnly(screens, { signInFirst: orProblem(401, signInFirst(screens)), notYours: orProblem(403, notYours) }),
    );
  app.use(seeServerAway(screens));
  app.use(keptPages(screens, finish));
  app.route('/', assetRoutes());
  app.route('/', noSignalRoute());
  for (const routes of SCREEN_ROUTES) app.route('/', routes(screens));
  const methodsOf = allowedMethods(app.routes);
  app.notFound((c) => {
    const methods = methodsOf(c.req.path);
    if (methods.length === 0 || methods.includes(c.req.method)) return orProblem(404, missing)(c);
    return orProblem(405, notByThis)(c, methods);
  });
  app.onError(fault(log));
  return mountedAt(app, door.path);
};
