/** A form of a page: where it is sent, what it sends as it stands, and its fields that take any text. */
export interface SentForm {
  action: string;
  fields: Record<string, string>;
  texts: { name: string; isLong: boolean }[];
}

const attribute = (tag: string, name: string): string | null =>
  new RegExp(`\\s${name}="([^"]*)"`).exec(tag)?.[1]?.replaceAll('&amp;', '&').replaceAll('&quot;', '"') ?? null;

const isText = (tag: string): boolean => ['text', 'tel', null].includes(attribute(tag, 'type'));
const isSent = (tag: string): boolean =>
  !['radio', 'checkbox'].includes(attribute(tag, 'type') ?? '') || /\schecked\b/.test(tag);

const chosenOf = (options: string): string =>
  attribute(
    /<option\b[^>]*\sselected\b[^>]*>/.exec(options)?.[0] ?? /<option\b[^>]*>/.exec(options)?.[0] ?? '',
    'value',
  ) ?? '';

/** The forms of a page that change something. */
export const formsOn = (html: string, path: string): SentForm[] =>
  [...html.matchAll(/<form\b([^>]*)>([\s\S]*?)<\/form>/g)].flatMap(([, head = '', inside = '']) => {
    if (attribute(head, 'method') !== 'post' || head.includes('multipart')) return [];
    const fields: Record<string, string> = {};
    const texts: SentForm['texts'] = [];
    for (const [tag] of inside.matchAll(/<input\b[^>]*>/g)) {
      const name = attribute(tag, 'name');
      if (name === null || !isSent(tag)) continue;
      fields[name] ??= attribute(tag, 'value') ?? '';
      if (isText(tag) && !tag.includes('readonly')) texts.push({ name, isLong: false });
    }
    for (const [, tag = '', text = ''] of inside.matchAll(/<textarea\b([^>]*)>([\s\S]*?)<\/textarea>/g)) {
      const name = attribute(tag, 'name');
      if (name === null || tag.includes('readonly')) continue;
      fields[name] = text;
      texts.push({ name, isLong: true });
    }
    for (const [, tag = '', options = ''] of inside.matchAll(/<select\b([^>]*)>([\s\S]*?)<\/select>/g))
      fields[attribute(tag, 'name') ?? ''] = chosenOf(options);
    return [{ action: attribute(head, 'action') ?? path, fields, texts }];
  });
