/** How wide a text is, in points. */
export type Measure = (text: string) => number;

/** The longest beginning of a word that fits, at least one letter, and the rest. */
function cut(word: string, width: number, measure: Measure): [string, string] {
  const letters = Array.from(word);
  let low = 1;
  let high = letters.length;
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (measure(letters.slice(0, middle).join('')) <= width) low = middle;
    else high = middle - 1;
  }
  return [letters.slice(0, low).join(''), letters.slice(low).join('')];
}

function linesOfParagraph(paragraph: string, width: number, measure: Measure): string[] {
  const lines: string[] = [];
  let line = '';
  for (let word of paragraph.split(' ')) {
    const joined = line === '' ? word : `${line} ${word}`;
    if (measure(joined) <= width) {
      line = joined;
      continue;
    }
    if (line !== '') lines.push(line);
    while (measure(word) > width && word.length > 1) {
      const [first, rest] = cut(word, width, measure);
      if (rest === '') break;
      lines.push(first);
      word = rest;
    }
    line = word;
  }
  return [...lines, line];
}

/** A text as lines that fit a width; lines end at spaces, and inside a word only where it is wider than a line. */
export function textLines(text: string, width: number, measure: Measure): string[] {
  return text.split('\n').flatMap((paragraph) => linesOfParagraph(paragraph, width, measure));
}
