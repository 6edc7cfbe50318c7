import { Html } from '../../html.ts';

/** Attributes that hold ids, or lists of them. */
const IDS = / (id|for|aria-labelledby|aria-describedby|aria-controls)="([^"]+)"/g;

/** The same HTML with all of its ids in a space of their own, so that it can stand in a page that has them already. */
export function prefixIds({ source }: Html, prefix: string): Html {
  return new Html(
    source.replace(/<[a-z][^>]*>/gi, (tag) =>
      tag
        .replace(
          IDS,
          (_, name: string, ids: string) =>
            ` ${name}="${ids
              .split(' ')
              .map((id) => `${prefix}${id}`)
              .join(' ')}"`,
        )
        .replace(/url\(#/g, `url(#${prefix}`)
        .replace(/ ((?:xlink:)?href)="#/g, ` $1="#${prefix}`),
    ),
  );
}
