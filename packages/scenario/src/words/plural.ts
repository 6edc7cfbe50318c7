/** Whether two words are the same name, whatever their case, and with one of them perhaps in the plural. */
function isSameName(one: string, other: string): boolean {
  const [left, right] = [one.toLowerCase(), other.toLowerCase()];
  return left === right || pluralsOf(left).includes(right) || pluralsOf(right).includes(left);
}

/** How the plural of an English word may be written: `boxes`, `bodies`, `shelves`. */
function pluralsOf(word: string): string[] {
  const plurals = [`${word}s`, `${word}es`];
  if (/[^aeiou]y$/.test(word)) plurals.push(`${word.slice(0, -1)}ies`);
  if (/(?:[^f]f|fe)$/.test(word)) plurals.push(word.replace(/fe?$/, 'ves'));
  return plurals;
}

/** The name that is meant by a word: the same, else the one that differs by case or number alone; or undefined. */
export function nameMeant(word: string, names: readonly string[]): string | undefined {
  return names.find((name) => name === word) ?? names.find((name) => isSameName(name, word));
}
