import { keptTogether } from '@buildweek/charts';
import { type Html, html, nameText } from '../html.ts';

/** Letters from which on the answer is set smaller, and smaller still. */
const LONG_ANSWER = 90;
const VERY_LONG_ANSWER = 200;

/** An answer in words: its first sentence large, the others below it. */
export function answerInWords(sentences: readonly string[]): Html {
  const [first, ...others] = sentences;
  return html`${first === undefined ? null : firstSentence(first)}
${otherSentences(others)}`;
}

/** The sentence that answers the question of a page. */
export function firstSentence(sentence: string): Html {
  const text = keptTogether(sentence);
  const size = text.length > VERY_LONG_ANSWER ? 'very-long' : text.length > LONG_ANSWER ? 'long' : 'short';
  return html`<p class="answer ${size}">${nameText(text)}</p>`;
}

/** What else belongs to the answer; null where there is nothing. */
export function otherSentences(sentences: readonly string[]): Html | null {
  if (sentences.length === 0) return null;
  return html`<ul class="answers">${sentences.map((sentence) => html`<li>${nameText(keptTogether(sentence))}</li>`)}</ul>`;
}
