import type { SourceNode } from '../source/source-node.ts';

/**
 * A value of a file on one line, as it can be written behind a colon anywhere: groups in braces, lists in brackets.
 *
 * @param node read from the text
 * @param text of the whole file
 */
export function flowText(node: SourceNode, text: string): string {
  switch (node.kind) {
    case 'empty':
      return '{}';
    case 'list':
      return flowList(node.items.map((item) => flowText(item, text)));
    case 'map':
      return flowGroup(node.entries.map((entry) => [entry.key, flowText(entry.node, text)]));
    case 'scalar': {
      const written = text.slice(node.span.start, node.span.end);
      const isQuoted = /^(".*"|'.*')$/.test(written);
      // A text over several lines, or one that braces would end, is written between quotes.
      return isQuoted || (!/[\n[\]{}]/.test(written) && !/^[|>]/.test(written))
        ? written
        : JSON.stringify(node.text);
    }
  }
}

/** `{ hours: late, count: 2 }`; keys are quoted where that is needed. */
export function flowGroup(entries: readonly (readonly [key: string, value: string])[]): string {
  if (entries.length === 0) return '{}';
  return `{ ${entries.map(([key, value]) => `${flowKey(key)}: ${value}`).join(', ')} }`;
}

/** `[run machines, hand work]`; an item with a comma is quoted. */
export function flowList(items: readonly string[]): string {
  const isPlain = (item: string): boolean => !item.includes(',') || /^["'[{]/.test(item);
  return `[${items.map((item) => (isPlain(item) ? item : JSON.stringify(item))).join(', ')}]`;
}

/** A key as it is written in braces. */
export function flowKey(key: string): string {
  return /^[\p{L}\p{N}][\p{L}\p{N} _.-]*$/u.test(key) ? key : JSON.stringify(key);
}
