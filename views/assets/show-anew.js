// The page once more, in its place: what stands in it has been changed, here or by somebody else.

/** Pages that follow the day in the yard. */
const FOLLOWS = /^\/(today|moulds|mould\/[^/]+)$/;
const FIELDS = '#page :is(input:not([type=hidden]), textarea)';

const isTyped = (field) =>
  ['checkbox', 'radio'].includes(field.type)
    ? field.checked !== field.defaultChecked
    : field.value !== field.defaultValue;

/** Nothing that was typed is lost: then the page stays as it is. */
export const mayShowAnew = () => ![...document.querySelectorAll(FIELDS)].some(isTyped);

const address = () => {
  const url = new URL(location.href);
  for (const name of ['done', 'read']) url.searchParams.delete(name);
  return url.pathname + url.search;
};

const summaries = (of) => [...document.querySelectorAll(`#page ${of} > summary`)];
const nameOf = (summary) => summary.ariaLabel ?? summary.textContent;

/** Swaps the part of the page that follows the yard. */
export const showAnew = async () => {
  if (!FOLLOWS.test(location.pathname) || !mayShowAnew()) return;
  const open = new Set(summaries('details[open]').map(nameOf));
  await window.htmx.ajax('GET', address(), { target: '#page', swap: 'innerMorph' });
  for (const summary of summaries('details')) if (open.has(nameOf(summary))) summary.parentElement.open = true;
  document.querySelector('.as-kept')?.remove();
};
