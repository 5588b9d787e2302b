import type { Page } from 'playwright-core';

/** Run within the page: its own functions, and no types of a browser here. */
const FIND = `(least) => {
  const LEAST_WIDTH = 24;
  const TO_TOUCH = 'a[href], button, select, textarea, summary, .choice, input:not([type=hidden], [type=radio], [type=checkbox])';
  const words = (text) => text.replaceAll(/[^\\p{L}\\p{N}]/gu, '').length;
  const isInline = (element) => {
    if (element.tagName !== 'A' || getComputedStyle(element).display !== 'inline') return false;
    let block = element.parentElement;
    while (getComputedStyle(block).display === 'inline') block = block.parentElement;
    const links = [...block.querySelectorAll('a, button')].map((link) => link.textContent).join('');
    return words(block.textContent) > words(links);
  };
  return [...document.querySelectorAll(TO_TOUCH)]
    .filter((element) => element.checkVisibility({ opacityProperty: true }))
    .filter((element) => !element.closest('.unseen, .skip, .day-picker') && !isInline(element))
    .map((element) => ({ html: element.outerHTML.slice(0, 140), box: element.getBoundingClientRect() }))
    .filter(({ box }) => box.height < least - 0.01 || box.width < LEAST_WIDTH)
    .map(({ html, box }) => Math.round(box.height) + ' px: ' + html);
}`;

/**
 * What of a page is to be touched and is lower than `least` pixels, or narrower than 24. A link within a sentence is left out, as
 * WCAG 2.2 does (2.5.8, exception "Inline": the target is in a sentence, or no higher than the line of text beside it lets it be),
 * and so is what is only there for a keyboard.
 */
export const smallTargets = (page: Page, least: number): Promise<string[]> =>
  page.evaluate<string[]>(`(${FIND})(${least})`);
