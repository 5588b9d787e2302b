const SAID = /<p\b[^>]*\sdata-fault="([^"]*)" data-at="([^"]*)"[^>]*>([\s\S]*?)<\/p>/g;
const LISTED = /<a data-leads-to="([^"]*)" href="[^"]*">([\s\S]*?)<\/a>/g;

/**
 * A page whose list of what was wrong leads to the fields it is about: each line to where the page says so by the name of
 * the field, or else in the same words. What the page says nowhere else, such as of a step that is no longer there, leads
 * nowhere, and is no link.
 *
 * Example: beside `<p data-fault="on" data-at="on-7">No day.</p>` the line `<a data-leads-to="on" …>No
 * day.</a>` becomes `<a href="#on-7">No day.</a>`.
 */
export const leadToFaults = (html: string): string => {
  if (!html.includes('data-leads-to=')) return html;
  const said = [...html.matchAll(SAID)].map(([, name, at, words]) => ({ name, at, words }));
  return html.replaceAll(LISTED, (_all, name: string, words: string) => {
    const found = said.find((one) => one.name === name) ?? said.find((one) => one.words === words);
    return found ? `<a href="#${found.at}">${words}</a>` : words;
  });
};
