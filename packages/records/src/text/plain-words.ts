/**
 * Words in small letters without accents, so that `Priorität`, `PRIORITAET` and `priorite` can be told by few
 * spellings: ä becomes a, ß becomes ss, everything but letters and digits one space.
 */
export function plainWords(text: string): string {
  return text
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .toLowerCase()
    .replace(/ß/g, 'ss')
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();
}
