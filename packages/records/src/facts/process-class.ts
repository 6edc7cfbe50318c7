import { plainWords } from '../text/plain-words.ts';

/** Words by which a process is known, the more special before the more general, and the class of machine that they mean. */
const CLASSES: readonly (readonly [RegExp, ProcessClass])[] = [
  [/\b(heated|high temp\w*|hot|chamber|beheizt\w*)\b/, 'heated MEX'],
  [/\b(powder|pulver|poudre|polvo|polvere|po|sls|pbf|nylon|pa ?1[12]|tpu powder)\b/, 'compact PBF'],
  [/\b(large laser|stereo\w*)\b/, 'large laser VPP'],
  [/\b(resin\w*|harz\w*|resine|resina|sla|dlp|vpp|vat|photopolymer\w*)\b/, 'small mask VPP'],
  [/\b(filament\w*|fff|mex|extru\w*|pla|petg|abs|asa)\b/, 'small MEX'],
];

/** A generic class of machines. */
export type ProcessClass = 'small MEX' | 'heated MEX' | 'small mask VPP' | 'large laser VPP' | 'compact PBF';

/**
 * The class of machine that words of a log mean.
 * @param told words, the most telling first: of the process, of the machine, of the material
 * @returns null when none is known
 */
export function processClass(told: readonly (string | null)[]): ProcessClass | null {
  for (const words of told) {
    if (words === null) continue;
    const plain = plainWords(words);
    const found = CLASSES.find(([pattern]) => pattern.test(plain));
    if (found !== undefined) return found[1];
  }
  return null;
}
