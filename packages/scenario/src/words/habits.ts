/** A way of writing that is usual elsewhere and says the same as one of this format. */
type Habit = readonly [pattern: RegExp, rewritten: (...groups: string[]) => string];

const RANGE_WORD = String.raw`\s*(?:-|–|—|\.\.|\bto\b|\buntil\b|\btill\b|\bthrough\b)\s*`;
const DATE = String.raw`\d{4}-\d{2}-\d{2}`;
const CLOCK = String.raw`\d{1,2}:\d{2}`;
const DAY = '(?:mon|tue|wed|thu|fri|sat|sun)[a-z]*';

const PERIODS: Readonly<Record<string, string>> = { h: 'hour', hr: 'hour', d: 'day', w: 'week', wk: 'week' };

const SMALL_NUMBERS = 'one two three four five six seven eight nine ten eleven twelve'.split(' ');
const UNIT = '(?:working\\s+|business\\s+)?(?:min|hour|day|week|month|year)';

/** Hours and minutes of a duration; only as they were written, not where another habit made a time of day. */
const CLOCK_AS_DURATION: Habit = [/\b(\d+):(\d{2})\b/g, (_, hours, minutes) => hoursText(hours, minutes)];

/** None of them changes what is said where its result is accepted. */
const HABITS: readonly Habit[] = [
  [/\b(\d{1,2})\.(\d{1,2})\.(\d{4})\b/g, (_, day, month, year) => isoDate(year, month, day)],
  [/\b(\d{4})[/.-](\d{1,2})[/.-](\d{1,2})\b/g, (_, year, month, day) => isoDate(year, month, day)],
  [
    /\b(\d{1,2})(?:[:.](\d{2}))?\s*([ap])\.?m\b\.?/gi,
    (text, hour, minute, half) => hourOfHalf(text, hour, minute, half),
  ],
  // From the morning to the afternoon on a clock of twelve hours.
  [
    /(?<![\d:-])(\d{1,2})\s*(?:a\.?m\.?)?\s*[-–]\s*(\d{1,2})(?![\d:-]|\s*[ap]\.?m)/gi,
    (text, from = '', to = '') =>
      Number(to) < Number(from) && Number(from) <= 12
        ? `${from.padStart(2, '0')}:00-${Number(to) + 12}:00`
        : text,
  ],
  [/\bnoon\b/gi, () => '12:00'],
  [/\b(\d{1,2})\.(\d{2})\b/g, (_, hour, minute) => `${hour}:${minute}`],
  [new RegExp(`(${DATE})${RANGE_WORD}(${DATE})`, 'gi'), (_, first, last) => `${first} to ${last}`],
  [new RegExp(`(${CLOCK})${RANGE_WORD}(${CLOCK})`, 'gi'), (_, first, last) => `${first}-${last}`],
  [new RegExp(`\\b(${DAY})${RANGE_WORD}(${DAY})\\b`, 'gi'), (_, first, last) => `${first}-${last}`],
  [
    /(\d)(\s*[a-z%]*)\s*(?:-|–|—|\.\.|\buntil\b|\btill\b)\s*(?=\.?\d)/gi,
    (_, digit, unit) => `${digit}${unit?.trimEnd()} to `,
  ],
  [
    new RegExp(`\\b(${SMALL_NUMBERS.join('|')})\\s+(?=${UNIT})`, 'gi'),
    (_, number = '') => `${SMALL_NUMBERS.indexOf(number.toLowerCase()) + 1} `,
  ],
  [/\b(?:a|one)\s+fortnight\b/gi, () => '2 weeks'],
  [/^on$/i, () => 'yes'],
  [/^off$/i, () => 'no'],
  [/^(?:from|between)\s+(?=\d)/i, () => ''],
  [/^(\d+)\s+and\s+(?=\d)/i, (_, low) => `${low} to `],
  [
    /\s*(?:\/|\ban?\b|\beach\b|\bevery\b|\bper\b)\s*(hour|hr|h|day|d|week|wk|w|month|year|part|piece|build|job|batch)\b/gi,
    (_, period) => ` per ${PERIODS[period.toLowerCase()] ?? period.toLowerCase()}`,
  ],
  [/\b(\d+)\s+weekly\b/gi, (_, number) => `${number} per week`],
  [/\b(\d+)\s+daily\b/gi, (_, number) => `${number} per day`],
  [
    /\b(\d+)\s*-?(?:wds?|work-?\s?days?|working-days?|business\s+days?)\b/gi,
    (_, number) => `${number} working ${number === '1' ? 'day' : 'days'}`,
  ],
  [/\b(\d+)\s*h\s*(\d{1,2})(?:\s*m(?:in)?)?\b/gi, (_, hours, minutes) => hoursText(hours, minutes)],
  [/^(0?\.\d+)(?=$|\s)/, (_, share) => `${Number((Number(share) * 100).toPrecision(12))} %`],
  [
    /^(\d+(?:\s+to\s+\d+)?)\s+(?:parts|pieces|pcs|people|persons|machines|stations|jobs|units|weeks|replications)$/i,
    (_, number) => number,
  ],
];

/** Habits that come together in one text, and texts that come of it, at most. */
const MOST_TOGETHER = 4;
const MOST_TEXTS = 40;

/** Texts that say the same in the words of this format, as far as habits of writing are known; few habits first. */
export function rewritings(text: string): string[] {
  const texts = new Set([text]);
  let latest = [text];
  for (let together = 1; together <= MOST_TOGETHER && texts.size < MOST_TEXTS; together++) {
    const habits = together === 1 ? [...HABITS, CLOCK_AS_DURATION] : HABITS;
    latest = latest
      .flatMap((written) => habits.map((habit) => rewrite(written, habit)))
      .filter((candidate) => !texts.has(candidate));
    for (const candidate of latest) texts.add(candidate);
  }
  texts.delete(text);
  return [...texts];
}

function rewrite(text: string, [pattern, rewritten]: Habit): string {
  return text.replace(pattern, (...groups) => rewritten(...groups.map((group) => String(group ?? ''))));
}

function isoDate(year = '', month = '', day = ''): string {
  return `${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`;
}

function hourOfHalf(text: string, hour = '', minute = '', half = ''): string {
  const twelfth = Number(hour);
  if (twelfth < 1 || twelfth > 12) return text;
  const inDay = (twelfth % 12) + (half.toLowerCase() === 'p' ? 12 : 0);
  return `${String(inDay).padStart(2, '0')}:${minute === '' ? '00' : minute}`;
}

/** Hours and minutes as one number where that is short, else with both units. */
function hoursText(hours = '', minutes = ''): string {
  const sum = Number(hours) + Number(minutes) / 60;
  return Number(minutes) % 3 === 0
    ? `${Number(sum.toFixed(2))} h`
    : `${Number(hours)} h ${Number(minutes)} min`;
}
