/** What the children of a group take from it when they do not say it themselves. */
const INHERITED = ['fill', 'stroke', 'stroke-width', 'font-size', 'font-weight', 'text-anchor'];

/**
 * Lets a group say once what all of its children say alike. Only groups of plain drawings and texts are looked at, in
 * the way in which vega writes them: one element after the other, attributes between double quotes.
 */
export function compactGroups(svg: string): string {
  return svg.replace(
    /<g( [^>]*)?>((?:<(?:line|path|rect) [^>]*\/>|<text [^>]*>[^<]*<\/text>)+)<\/g>/g,
    (group: string, own: string | undefined, children: string) => {
      const tags = children.match(/<[a-z]+ [^>]*>/g) ?? [];
      const [first = ''] = tags;
      const shared = INHERITED.flatMap((name) => {
        const attribute = new RegExp(` ${name}="[^"]*"`).exec(first)?.[0];
        return attribute !== undefined && tags.length > 1 && tags.every((tag) => tag.includes(attribute))
          ? [attribute]
          : [];
      }).filter((attribute) => !(own ?? '').includes(attribute.slice(0, attribute.indexOf('"'))));
      if (shared.length === 0) return group;
      const without = children.replace(/<[a-z]+ [^>]*>/g, (tag) =>
        shared.reduce((rest, attribute) => rest.replace(attribute, ''), tag),
      );
      return `<g${own ?? ''}${shared.join('')}>${without}</g>`;
    },
  );
}
