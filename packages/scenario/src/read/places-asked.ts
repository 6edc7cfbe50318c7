import type { Fields } from '../fields.ts';

/** Machines and stations that parts with a shape come to; what they have to say depends on it. */
export interface PlacesAsked {
  /** Names of the places that a part with a shape comes to. */
  readonly byShape: ReadonlySet<string>;
  /** Names of the places that a part without one comes to. */
  readonly byType: ReadonlySet<string>;
}

/** Looks through parts and routes, as far as the file can be understood before its values are read. */
export function placesAsked(fields: Fields): PlacesAsked {
  const byShape = new Set<string>();
  const byType = new Set<string>();
  for (const name of fields.names('parts')) {
    const part = fields.group('parts').group(name);
    const asked = part.has('size') || part.has('mesh') ? byShape : byType;
    const route = textOf(part, 'route');
    const list = fields.group('routes').group(route);
    for (let index = 0; index < fields.group('routes').length(route); index++) {
      const item = list.group(index);
      asked.add(textOf(item.group(item.names()[0] ?? ''), 'on'));
    }
  }
  return { byShape, byType };
}

function textOf(fields: Fields, key: string): string {
  const node = fields.node(key);
  return node?.kind === 'scalar' ? node.text : '';
}
