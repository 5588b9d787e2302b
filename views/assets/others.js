// What others do is seen without loading the page: the server says when anything was changed, and the page is shown anew in its
// place, unless somebody is in the middle of typing.

import { ROOT } from './own-path.js';
import { follows, mayShowAnew, showAnew } from './show-anew.js';

const AGAIN_MS = 1000;

let source = null;
let shown;
let isDue = false;

const catchUp = async () => {
  if (!isDue || !mayShowAnew()) return;
  isDue = false;
  await showAnew();
};

const hear = ({ data }) => {
  // The page was drawn just before the first word; one out of the phone's own store was not.
  isDue ||= shown === undefined ? document.querySelector('.as-kept') !== null : data !== shown;
  shown = data;
  catchUp();
};

// Only a page that is looked at listens: a browser has few lines to one server.
const listen = () => {
  const wanted = follows() && !document.hidden && navigator.onLine;
  if (wanted && !source) {
    source = new EventSource(`${ROOT}changes/stream`);
    source.addEventListener('revision', hear);
  }
  if (!wanted) {
    source?.close();
    source = null;
  }
};

listen();
document.addEventListener('visibilitychange', listen);
window.addEventListener('online', listen);
window.addEventListener('offline', listen);
setInterval(catchUp, AGAIN_MS);
