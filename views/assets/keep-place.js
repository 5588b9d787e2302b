// Where somebody reads, and what is about to be pressed, stay where they are while the page is shown anew round them.

/** What is known by what it says. */
export const NAMED = '#page :is(button, summary, a, h2, h3)';

/** By what it says, and by what it stands under: each mould has a "Damaged …". */
export const nameOf = (element) => {
  const over = element.closest('li, section')?.querySelector('h2, h3');
  // A mould is called by its name, and not by how it is just then.
  const own = element.querySelector('h3') ?? element;
  return `${over?.textContent ?? ''} ${element.ariaLabel ?? own.textContent}`;
};

const named = () => [...document.querySelectorAll(NAMED)];
const same = (element) => named().filter((one) => one.tagName === element.tagName && nameOf(one) === nameOf(element));

/** What an element is called, and which of those that are called so: it may be another one afterwards. */
export const knownBy = (element) => ({
  ...{ tagName: element.tagName, name: nameOf(element) },
  place: same(element).indexOf(element),
});

/** The one that is known so, as the page is now. */
export const found = ({ tagName, name, place }) =>
  named().filter((one) => one.tagName === tagName && nameOf(one) === name)[place];

const inView = () =>
  named().find((element) => {
    const { top, height } = element.getBoundingClientRect();
    return height > 0 && top >= 0 && top < window.innerHeight;
  });

/** Does it, and puts focus and scroll back to what they were at; nothing has focus whose place is gone. */
export const keepingPlace = async (change) => {
  const active = document.activeElement?.matches(NAMED) ? document.activeElement : null;
  const seen = active ?? inView();
  const focus = active && knownBy(active);
  const anchor = seen && { ...knownBy(seen), top: seen.getBoundingClientRect().top };
  await change();
  await new Promise((resolve) => requestAnimationFrame(resolve));
  const again = focus && found(focus);
  if (again) again.focus({ preventScroll: true });
  else if (focus) document.activeElement?.blur();
  const there = anchor && found(anchor);
  if (there) window.scrollBy(0, there.getBoundingClientRect().top - anchor.top);
};
