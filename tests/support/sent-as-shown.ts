/** What a page's form would send if it were sent just as it is shown. */
export const sentAsShown = (html: string): Record<string, string> => {
  const form = /<form class="form[^"]*"[^>]*>([\s\S]*?)<\/form>/.exec(html)?.[1] ?? '';
  const attribute = (tag: string, name: string) => new RegExp(` ${name}="([^"]*)"`).exec(tag)?.[1];
  const plain = (text = '') =>
    text
      .replaceAll('&quot;', '"')
      .replaceAll('&#39;', "'")
      .replaceAll('&lt;', '<')
      .replaceAll('&gt;', '>')
      .replaceAll('&amp;', '&');
  const sent: Record<string, string> = {};
  for (const [tag] of form.matchAll(/<input[^>]*>/g)) {
    const [name, type] = [attribute(tag, 'name'), attribute(tag, 'type')];
    if (!name || ((type === 'radio' || type === 'checkbox') && !/ checked/.test(tag))) continue;
    sent[plain(name)] = plain(attribute(tag, 'value'));
  }
  for (const [, name = '', options = ''] of form.matchAll(/<select[^>]* name="([^"]*)"[^>]*>([\s\S]*?)<\/select>/g)) {
    const chosen = /<option value="([^"]*)" selected/.exec(options) ?? /<option value="([^"]*)"/.exec(options);
    sent[plain(name)] = plain(chosen?.[1]);
  }
  return sent;
};
