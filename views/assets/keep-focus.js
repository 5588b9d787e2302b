// A part of the page that is shown anew throws nobody out of it: what had the focus there has it again.

import { found, knownBy, NAMED } from './keep-place.js';

let kept = null;

/** Acts lead on to what they say; only what is asked for puts the focus back. */
const isAsked = (ctx) => ctx?.request?.method === 'GET' && ctx.target instanceof Element;

document.addEventListener('htmx:before:swap', ({ detail }) => {
  const active = document.activeElement;
  const isIn = isAsked(detail?.ctx) && detail.ctx.target.contains(active) && active.matches(NAMED);
  kept = isIn ? { ...knownBy(active), from: detail.ctx.target } : null;
});

document.addEventListener('htmx:after:swap', () => {
  const focus = kept;
  kept = null;
  if (!focus || document.activeElement !== document.body) return;
  const again = found(focus);
  if (again) {
    again.focus({ preventScroll: true });
    return;
  }
  // What was pressed is gone: reading goes on where its answer stands.
  if (!focus.from.isConnected) return;
  focus.from.tabIndex = -1;
  focus.from.focus({ preventScroll: true });
});
