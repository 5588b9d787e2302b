// The page once more, in its place: what stands in it has been changed, here or by somebody else.

import { keepingPlace, nameOf } from './keep-place.js';
import { ownPath } from './own-path.js';

/** Pages that follow the day in the yard. */
const FOLLOWS = /^\/(today|moulds|mould\/[^/]+|piece\/\d+\/[^/]+)$/;
const FIELDS = '#page :is(input:not([type=hidden]), textarea, select)';
/** What a form said when it came back is on no page that is asked for. */
const CAME_BACK = '#page :is(.form-errors, .asked, .effect)';

export const follows = () => FOLLOWS.test(ownPath(location.href));

const isChosen = ({ options }) => {
  const byDefault = [...options].findIndex(({ defaultSelected }) => defaultSelected);
  return options.selectedIndex !== Math.max(byDefault, 0);
};

const isTyped = (field) => {
  if (field.closest('[data-sound]')) return false;
  if (field.matches('select')) return isChosen(field);
  return ['checkbox', 'radio'].includes(field.type)
    ? field.checked !== field.defaultChecked
    : field.value !== field.defaultValue;
};

const isInField = () => document.activeElement?.matches(FIELDS) ?? false;

const onItsWay = new Set();
document.addEventListener('htmx:before:request', ({ detail }) => onItsWay.add(detail.ctx));
// What is swapped away says nothing at the end any more.
for (const over of ['htmx:after:request', 'htmx:error', 'htmx:finally:request'])
  document.addEventListener(over, ({ detail }) => onItsWay.delete(detail?.ctx));

/** Nothing that is being typed, asked or sent is disturbed: until it is done the page stays as it is. */
export const mayShowAnew = () =>
  onItsWay.size === 0 &&
  !isInField() &&
  document.querySelector(CAME_BACK) === null &&
  ![...document.querySelectorAll(FIELDS)].some(isTyped);

// What was just done stays in sight with its undoing.
const address = () => {
  const url = new URL(location.href);
  for (const name of ['done', 'read']) url.searchParams.delete(name);
  const done = document.querySelector('#page .notice input[name=change]')?.value;
  if (done) url.searchParams.set('done', done);
  return url.pathname + url.search;
};

const summaries = (of) => [...document.querySelectorAll(`#page ${of} > summary`)];

const swap = async () => {
  const open = new Set(summaries('details[open]').map(nameOf));
  // All that stands in `main` is asked for, and not the part of it that a search swaps.
  const headers = { 'HX-Target': 'main#page' };
  await window.htmx.ajax('GET', address(), { target: '#page', swap: 'innerMorph', headers });
  for (const summary of summaries('details')) if (open.has(nameOf(summary))) summary.parentElement.open = true;
};

/** Swaps the part of the page that follows the yard; what is unfolded in it, has focus or is read stays where it is. */
export const showAnew = async () => {
  if (!follows() || !mayShowAnew()) return;
  await keepingPlace(swap);
  document.querySelector('.as-kept')?.remove();
};
