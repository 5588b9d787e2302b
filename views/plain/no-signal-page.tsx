import type { FC } from 'hono/jsx';
import { Answer } from '../parts/answer.tsx';

export const NO_SIGNAL = '/no-signal';

/** Shown by the phone itself where nobody answers. The list is filled in there (views/assets/service-worker.js). */
export const NoSignalPage: FC = () => (
  <>
    <Answer note="Nothing is lost: what was recorded is in the yard's book, and taps that were not sent wait on this phone.">
      No signal: this page is not on this phone.
    </Answer>
    <h2>Kept on this phone</h2>
    <ul class="kept-pages" />
    <p>Load this page again once there is a signal.</p>
  </>
);
