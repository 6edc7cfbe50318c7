/** Longer prints are taken for a slip. */
export const LONGEST_PRINT_HOURS = 2000;

const UNIT_HOURS: Readonly<Record<string, number>> = {
  d: 24,
  day: 24,
  days: 24,
  h: 1,
  hour: 1,
  hours: 1,
  m: 1 / 60,
  min: 1 / 60,
  minute: 1 / 60,
  minutes: 1 / 60,
  s: 1 / 3600,
  sec: 1 / 3600,
  second: 1 / 3600,
  seconds: 1 / 3600,
};
const NUMBER = String.raw`\d+(?:[.,]\d+)?`;
const PLAIN = new RegExp(`^${NUMBER}$`);
const CLOCK = /^(\d+):([0-5]\d)(?::([0-5]\d))?$/;
const TERMS = new RegExp(`^(?:${NUMBER}\\s*[a-z]+\\s*)+$`, 'i');

/**
 * Print hours as people write them: `5.3`, `5,3`, `5:20`, `5:20:30`, `5 h 20 min`, `1 day 3 h`, `320 min`.
 * @returns null when it is none of these
 */
export function printHoursOf(text: string): number | null {
  if (PLAIN.test(text)) return numberOf(text);
  const clock = CLOCK.exec(text);
  if (clock !== null) {
    const [, hours, minutes, seconds = '0'] = clock;
    return Number(hours) + Number(minutes) / 60 + Number(seconds) / 3600;
  }
  if (!TERMS.test(text)) return null;
  let sum = 0;
  let last = Number.POSITIVE_INFINITY;
  for (const [, number = '', unit = ''] of text.matchAll(new RegExp(`(${NUMBER})\\s*([a-z]+)`, 'gi'))) {
    const hours = UNIT_HOURS[unit.toLowerCase()];
    // From large to small, each unit once: anything else is a slip.
    if (hours === undefined || hours >= last) return null;
    last = hours;
    sum += numberOf(number) * hours;
  }
  return sum;
}

function numberOf(text: string): number {
  return Number(text.replace(',', '.'));
}
