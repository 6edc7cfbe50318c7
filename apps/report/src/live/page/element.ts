/** The one element of the live part with an attribute. @throws Error when it is not there */
export function element<Type extends HTMLElement>(root: ParentNode, attribute: string): Type {
  const found = root.querySelector<Type>(`[data-${attribute}]`);
  if (found === null) throw new Error(`The page has lost its ${attribute}.`);
  return found;
}

/** Text of a block of data in the page. */
export function dataOf(id: string): string {
  return document.getElementById(id)?.textContent ?? '';
}
