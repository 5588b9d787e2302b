/** What in a page points to an id of it that is not there, and ids that stand there twice. */
export const brokenWithin = (html: string): string[] => {
  const ids = [...html.matchAll(/\sid="([^"]*)"/g)].map(([, id]) => id!);
  const known = new Set(ids);
  const links = [...html.matchAll(/<a\b[^>]*\shref="#([^"]+)"/g)].map(([, id]) => ['link', id!] as const);
  const labels = [...html.matchAll(/<label\b[^>]*\sfor="([^"]+)"/g)].map(([, id]) => ['label', id!] as const);
  const words = [...html.matchAll(/\saria-describedby="([^"]+)"/g)].flatMap(([, all]) =>
    all!.split(' ').map((id) => ['words', id] as const),
  );
  return [
    ...[...links, ...labels, ...words].filter(([, id]) => !known.has(id)).map(([kind, id]) => `${kind} to #${id}`),
    ...ids.filter((id, place) => ids.indexOf(id) !== place).map((id) => `#${id} twice`),
  ];
};

/** Lines of the list of what was wrong that lead nowhere. */
export const linesWithoutLink = (html: string): string[] => {
  const [list = ''] = /<div class="warning form-errors[\s\S]*?<\/div>/.exec(html) ?? [];
  return [...list.matchAll(/<li>(?!<a )([\s\S]*?)<\/li>/g)].map(([, words]) => words!);
};

/** Links of the list of what was wrong that lead to something which is not said to be wrong. */
export const misleadingLinks = (html: string): string[] => {
  const [list = ''] = /<div class="warning form-errors[\s\S]*?<\/div>/.exec(html) ?? [];
  return [...list.matchAll(/href="#([^"]+)"/g)].flatMap(([, id]) => {
    const at = html.indexOf(` id="${id}"`);
    const tag = html.slice(html.lastIndexOf('<', at), html.indexOf('>', at) + 1);
    const isWrong = /aria-invalid="true"|class="[^"]*\b(wrong|error|step|choice)\b|type="checkbox"|id="sure-/.test(tag);
    return isWrong ? [] : [`#${id}: ${tag}`];
  });
};
