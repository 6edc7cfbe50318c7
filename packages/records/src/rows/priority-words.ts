import { says } from './answer-words.ts';
import { cleanText } from './clean-text.ts';
import { remembered } from './remembered.ts';

/** A word in the column of priorities. */
export interface SeenPriority {
  readonly word: string;
  readonly jobs: number;
  readonly isRush: boolean;
}

/** More words than this are no priorities. */
const MOST_WORDS = 50;

/** Tells rush jobs by the words of their priority. */
export class PriorityWords {
  private readonly words = new Map<string, { jobs: number; isRush: boolean }>();
  private readonly own: readonly string[] | undefined;

  private readonly meaning = remembered((cell) => {
    const isRush = says(cell, 'rush', this.own);
    const word = cleanText(cell) ?? '';
    const isCalm = this.own !== undefined || word === '' || says(cell, 'calm');
    return { word, isRush, answer: isRush ? true : isCalm ? false : null };
  });

  /** @param own what means rush, as the user says */
  constructor(own: readonly string[] | undefined) {
    this.own = own;
  }

  /** @returns null where a word is neither known as rush nor as ordinary, such as `2` */
  isRush(cell: string): boolean | null {
    const { word, isRush, answer } = this.meaning(cell);
    const seen = this.words.get(word);
    if (seen !== undefined) seen.jobs++;
    else if (this.words.size < MOST_WORDS) this.words.set(word, { jobs: 1, isRush });
    return answer;
  }

  seen(): SeenPriority[] {
    return [...this.words].map(([word, { jobs, isRush }]) => ({ word, jobs, isRush }));
  }
}
