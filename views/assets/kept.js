// Has the browser keep the pages that are needed in the yard (service-worker.js). It does on a secure address only.

import { ROOT } from './own-path.js';

const settled = 1500;
const worker = navigator.serviceWorker;

const askToKeep = async () => {
  const { active } = await worker.ready;
  active.postMessage({ keep: location.pathname });
};

if (worker) {
  const isNew = worker.controller === null;
  worker.register(`${ROOT}sw.js`).catch(() => undefined);
  if (isNew) askToKeep();

  // What was recorded is on the page that is kept as well.
  let waiting;
  document.addEventListener('htmx:after:swap', (event) => {
    const ctx = event.detail?.ctx;
    if (ctx?.target?.id !== 'page') return;
    document.querySelector('.as-kept')?.remove();
    clearTimeout(waiting);
    waiting = setTimeout(askToKeep, settled);
  });
}
