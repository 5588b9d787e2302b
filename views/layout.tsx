import type { Child, FC } from 'hono/jsx';
import type { Person } from '../shared/person.ts';
import { ServerAway } from './parts/server-away.tsx';

/** The screens the frame knows, in the order of the links at the top. */
export const SCREENS = [
  { at: 'when', path: '/', name: 'When?' },
  { at: 'today', path: '/today', name: 'Today' },
  { at: 'orders', path: '/orders', name: 'Orders' },
  { at: 'moulds', path: '/moulds', name: 'Moulds' },
  { at: 'turns', path: '/turns', name: 'Turns' },
  { at: 'buying', path: '/buying', name: 'Buying' },
  { at: 'yard', path: '/yard', name: 'Your yard' },
] as const;

/** Where somebody finds what they may do; everybody else has all screens. */
const YARD_SCREENS: readonly string[] = ['today', 'moulds'];
const COUNTING = { at: 'count', path: '/count', name: 'Count' };

export interface FrameProps {
  /** What the window is called: short, without the yard's name. */
  title: string;
  /** Which link at the top is this page's own. */
  at?: (typeof SCREENS)[number]['at'];
  yardName?: string;
  /** "yard": used standing up, with gloves on; everything to touch is 48 px or more. */
  place?: 'yard' | 'office';
  /** Added to the address of the assets, so that a new version is never an old one from the browser's store. */
  assetVersion: string;
  /** Where a browser without script is led: to the same page, once all of it is there. */
  withoutScript?: string;
  /** Nobody is in yet: no way on is shown that would be closed. */
  isOutside?: boolean;
  /** Who has signed in; null where nobody has to. */
  person: Person | null;
  /** For how long the server of the database has been away; null where it answers, and where there is none. */
  minutesAway: number | null;
  children?: Child;
}

const screensFor = (person: Person | null) =>
  person?.role === 'yard' ? [...SCREENS.filter(({ at }) => YARD_SCREENS.includes(at)), COUNTING] : SCREENS;

const SignedIn: FC<{ person: Person }> = ({ person }) => (
  <form class="signed-in" method="post" action="/sign-out">
    {person.name}
    <a href="/password" class="button quiet">
      Password
    </a>
    <button type="submit" class="button quiet">
      Sign out
    </button>
  </form>
);

const ScreenLinks: FC<{ at?: string; person: Person | null }> = ({ at, person }) => (
  <nav class="screens" aria-label="Screens">
    <ul>
      {screensFor(person).map((screen) => (
        <li>
          <a href={screen.path} aria-current={screen.at === at ? 'page' : undefined}>
            {screen.name}
          </a>
        </li>
      ))}
    </ul>
  </nav>
);

/** The frame of every page. Its one `main` holds what a page answers; a fragment is that part alone. */
export const Frame: FC<FrameProps> = ({
  title,
  at,
  yardName,
  place = 'office',
  assetVersion,
  withoutScript,
  isOutside,
  person,
  minutesAway,
  children,
}) => (
  <html lang="en-GB">
    <head>
      <meta charset="utf-8" />
      <meta name="viewport" content="width=device-width, initial-scale=1" />
      <meta name="color-scheme" content="light dark" />
      <meta name="htmx-config" content='{"includeIndicatorCSS":false,"history":false}' />
      <meta
        name="description"
        content="Plans a small casting yard: which mould is filled when, when an order can be ready, and what to buy by when."
      />
      {withoutScript && (
        <noscript>
          <meta http-equiv="refresh" content={`0;url=${withoutScript}`} />
        </noscript>
      )}
      <title>{`${title} · ${yardName ?? 'Mould Rota'}`}</title>
      <meta name="theme-color" content="#f2efe9" media="(prefers-color-scheme: light)" />
      <meta name="theme-color" content="#1c1a17" media="(prefers-color-scheme: dark)" />
      <link rel="icon" href="/assets/mark.svg" type="image/svg+xml" />
      <link rel="apple-touch-icon" href="/assets/apple-touch-icon.png" />
      <link rel="manifest" href="/assets/manifest.webmanifest" />
      <link rel="stylesheet" href={`/assets/styles.css?v=${assetVersion}`} />
      {yardName && (
        <link rel="stylesheet" href={`/assets/foot.css?yard=${encodeURIComponent(yardName)}`} media="print" />
      )}
      <script src={`/assets/screen.js?v=${assetVersion}`} defer></script>
      <script src={`/assets/clocks.js?v=${assetVersion}`} type="module"></script>
      <script src={`/assets/kept.js?v=${assetVersion}`} type="module"></script>
      <script src={`/assets/waiting.js?v=${assetVersion}`} type="module"></script>
      <script src={`/assets/keep-focus.js?v=${assetVersion}`} type="module"></script>
      <script src={`/assets/others.js?v=${assetVersion}`} type="module"></script>
      <script src={`/assets/photo.js?v=${assetVersion}`} type="module"></script>
      <script src={`/assets/passkey.js?v=${assetVersion}`} type="module"></script>
      <script src={`/assets/htmx.js?v=${assetVersion}`} defer></script>
    </head>
    <body class={place}>
      <a class="skip" href="#page">
        Skip to the page
      </a>
      <header class="top">
        <p class="yard-name">{yardName ?? 'Mould Rota'}</p>
        {!isOutside && <ScreenLinks at={at} person={person} />}
        {person && <SignedIn person={person} />}
      </header>
      <div id="not-sent" class="warning not-sent" role="alert" tabindex={-1} hidden>
        <p />
      </div>
      {minutesAway !== null && <ServerAway minutes={minutesAway} />}
      <main id="page" tabindex={-1}>
        {children}
      </main>
    </body>
  </html>
);
