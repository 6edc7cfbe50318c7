import type { Fields } from '../fields.ts';

/**
 * Names of the machines on which parts with a shape are built, as far as the file can be understood before its
 * values are read: what a machine has to say depends on it.
 */
export function machinesAsked(fields: Fields): ReadonlySet<string> {
  const asked = new Set<string>();
  for (const name of fields.names('parts')) {
    const part = fields.group('parts').group(name);
    if (!part.has('size') && !part.has('mesh')) continue;
    const route = textOf(part, 'route');
    const list = fields.group('routes').group(route);
    for (let index = 0; index < fields.group('routes').length(route); index++) {
      const item = list.group(index);
      const place = textOf(item.group(item.names()[0] ?? ''), 'on');
      if (fields.names('machines').includes(place)) asked.add(place);
    }
  }
  return asked;
}

function textOf(fields: Fields, key: string): string {
  const node = fields.node(key);
  return node?.kind === 'scalar' ? node.text : '';
}
