/** A button of a form: what it says, what it sends, and where, if not to the form's own address. */
export interface PageButton {
  words: string;
  name?: string;
  value: string;
  action?: string;
}

/** A form as a page shows it: where it is sent, what it would send as it stands, which of its fields take any text, and its buttons in order. */
export interface PageForm {
  action: string;
  fields: Readonly<Record<string, string>>;
  texts: readonly string[];
  buttons: readonly PageButton[];
}

const ENTITIES: Readonly<Record<string, string>> = { quot: '"', '#39': "'", lt: '<', gt: '>', amp: '&' };

export const plainText = (text: string): string =>
  text
    .replace(/<[^>]+>/g, ' ')
    .replace(/&(quot|#39|lt|gt|amp);/g, (_, name: string) => ENTITIES[name]!)
    .replace(/\s+/g, ' ')
    .trim();

const attribute = (tag: string, name: string): string | undefined => {
  const found = new RegExp(`\\s${name}="([^"]*)"`).exec(tag)?.[1];
  return found === undefined ? undefined : found.replace(/&(quot|#39|lt|gt|amp);/g, (_, n: string) => ENTITIES[n]!);
};

const isChecked = (tag: string): boolean => /\schecked(=""|\s|\/?>)/.test(tag);

const inputsOf = (html: string): [string, string][] =>
  [...html.matchAll(/<input\b[^>]*>/g)].flatMap(([tag]): [string, string][] => {
    const [name, type] = [attribute(tag, 'name'), attribute(tag, 'type')];
    if (!name || ((type === 'radio' || type === 'checkbox') && !isChecked(tag))) return [];
    return [[name, attribute(tag, 'value') ?? '']];
  });

const selectsOf = (html: string): [string, string][] =>
  [...html.matchAll(/<select\b([^>]*)>([\s\S]*?)<\/select>/g)].flatMap(([, tag = '', options = '']) => {
    const name = attribute(` ${tag}`, 'name');
    const tags = [...options.matchAll(/<option\b[^>]*>/g)].map(([option]) => option);
    const chosen = tags.find((option) => /\sselected/.test(option)) ?? tags[0];
    return name && chosen ? [[name, attribute(chosen, 'value') ?? ''] as [string, string]] : [];
  });

const textAreasOf = (html: string): [string, string][] =>
  [...html.matchAll(/<textarea\b([^>]*)>([\s\S]*?)<\/textarea>/g)].flatMap(([, tag = '', text = '']) => {
    const name = attribute(` ${tag}`, 'name');
    return name ? [[name, plainText(text)] as [string, string]] : [];
  });

const buttonsOf = (html: string): PageButton[] =>
  [...html.matchAll(/(<button\b[^>]*>)([\s\S]*?)<\/button>/g)].flatMap(([, tag = '', words = '']) => {
    if (attribute(tag, 'type') !== 'submit') return [];
    const [name, action] = [attribute(tag, 'name'), attribute(tag, 'formaction')];
    const button = { words: plainText(words), value: attribute(tag, 'value') ?? '' };
    return [{ ...button, ...(name ? { name } : {}), ...(action ? { action } : {}) }];
  });

const textsOf = (html: string): string[] =>
  [...html.matchAll(/<(?:input|textarea)\b[^>]*>/g)].flatMap(([tag]) => {
    const name = attribute(tag, 'name');
    const isText = ['text', 'tel', undefined].includes(attribute(tag, 'type')) && !tag.includes('readonly');
    return name && isText ? [name] : [];
  });

/** The forms of a page, or of a part of one, that are sent by POST, in the order in which they stand there. */
export const formsIn = (html: string): PageForm[] =>
  [...html.matchAll(/(<form\b[^>]*>)([\s\S]*?)<\/form>/g)]
    .filter(([, tag = '']) => attribute(tag, 'method') === 'post')
    .map(([, tag = '', inside = '']) => ({
      action: attribute(tag, 'action') ?? '',
      fields: Object.fromEntries([...textAreasOf(inside), ...selectsOf(inside), ...inputsOf(inside)]),
      texts: textsOf(inside),
      buttons: buttonsOf(inside),
    }));

/** What a page names that it asks about before it saves; undefined where it asks nothing. */
export const seenOn = (html: string): string | undefined => {
  const [tag] = /<button\b[^>]*\sname="seen"[^>]*>/.exec(html) ?? [];
  return tag && attribute(tag, 'value');
};

/** The other day that a page offers for the one that is asked about, as its button sends it; undefined where it offers none. */
export const anotherDayOn = (html: string): string | undefined => {
  const tags = [...html.matchAll(/<button\b[^>]*\sname="another-day"[^>]*>/g)].map(([tag]) => attribute(tag, 'value'));
  return tags.find((value) => value?.startsWith('promisedOn '));
};

/** What a page says was wrong, in its own words; nothing for a page that found no fault. */
export const faultsOn = (html: string): string => {
  const listed = [
    ...html.matchAll(/<p class="error"[^>]*>([\s\S]*?)<\/p>|<span class="error"[^>]*>([\s\S]*?)<\/span>/g),
  ];
  const lead = /role="alert"[^>]*>([\s\S]*?)<\/div>/.exec(html)?.[1];
  return (
    plainText(lead ?? listed.map(([all]) => all).join(' ')) ||
    plainText(/<main[^>]*>([\s\S]*)<\/main>/.exec(html)?.[1] ?? html).slice(0, 200)
  );
};
