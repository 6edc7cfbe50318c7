import type { YAMLError } from 'yaml';
import type { SourceSpan } from './source-node.ts';
import type { ProblemDetail, SourceText } from './source-text.ts';

/** Says in the words of the reader what the YAML parser did not like, and where. */
export function explain(error: YAMLError, source: SourceText): { span: SourceSpan; detail: ProblemDetail } {
  const opened = openedBy(error, source.text);
  const span = opened ?? { start: error.pos[0], end: error.pos[1] };
  const text = source.lineText(source.placeOf(span.start).line);
  return { span, detail: explainLine(error, text) };
}

/** What was opened and not closed, when that is the mistake: it says more than the place where it was noticed. */
function openedBy(error: YAMLError, text: string): SourceSpan | null {
  const isUnclosed =
    (error.code === 'BAD_INDENT' && error.message.startsWith('Flow')) ||
    (error.code === 'MISSING_CHAR' && error.message.includes('quote'));
  const start = isUnclosed ? lastOpened(text.slice(0, error.pos[0])) : null;
  return start === null ? null : { start, end: start + 1 };
}

function explainLine(error: YAMLError, text: string): ProblemDetail {
  const found = text.trim();
  if (error.code === 'TAB_AS_INDENT' || /^ *\t/.test(text)) {
    return {
      message: 'A tab stands where the line is indented.',
      found: 'a tab',
      expected: 'spaces; YAML does not allow tabs there',
      write: text.replace(/\t/g, '  '),
    };
  }
  const glued = /^((?:- )?[\p{L}][\p{L} -]*):([^\s:/].*)$/u.exec(found);
  if (glued !== null) {
    return {
      message: 'A space is missing after the colon.',
      found,
      expected: 'a key, a colon, a space and the value',
      write: `${glued[1]}: ${glued[2]}`,
    };
  }
  return { found, ...explainCode(error, found) };
}

/** Position of the last bracket, brace or quote of a text that is opened and not closed; null when there is none. */
function lastOpened(text: string): number | null {
  const open: { at: number; closing: string }[] = [];
  for (let at = 0; at < text.length; at++) {
    const character = text[at] ?? '';
    const last = open.at(-1);
    if (last !== undefined && (last.closing === '"' || last.closing === "'")) {
      if (character === '\\' && last.closing === '"') at++;
      else if (character === last.closing) open.pop();
    } else if (character === '#' && /\s|^$/.test(text[at - 1] ?? '')) {
      const end = text.indexOf('\n', at);
      at = end < 0 ? text.length : end;
    } else if (character === '{' || character === '[')
      open.push({ at, closing: character === '{' ? '}' : ']' });
    else if (character === last?.closing) open.pop();
    else if ((character === '"' || character === "'") && /[\s,[{]|^$/.test(text[at - 1] ?? '')) {
      open.push({ at, closing: character });
    }
  }
  return open.at(-1)?.at ?? null;
}

function explainCode(error: YAMLError, line: string): Omit<ProblemDetail, 'found'> {
  switch (error.code) {
    case 'BAD_INDENT':
      if (/^Flow (map|sequence)/.test(error.message)) {
        return unclosed(error.message.startsWith('Flow map') ? '}' : ']', line);
      }
      return {
        message: 'This line is indented differently from its neighbours.',
        expected: 'the same number of spaces in front of every key of one group',
        write: 'the line with as many spaces in front as the line above it that belongs to the same group',
      };
    case 'BLOCK_AS_IMPLICIT_KEY':
    case 'MULTILINE_IMPLICIT_KEY':
    case 'KEY_OVER_1024_CHARS':
      return {
        message: 'This cannot be read as a key and its value.',
        expected:
          'one "key: value" on each line; a key with lines indented below it has no value of its own; ' +
          'a value that contains ": " stands in quotes',
        write: quoted(line),
      };
    case 'MISSING_CHAR':
      return /quote/.test(error.message)
        ? unclosed(error.message.includes("'") ? "'" : '"', line)
        : {
            message: 'Something is missing here.',
            expected: 'a key, a colon, a space and the value',
            write: quoted(line),
          };
    case 'BAD_DIRECTIVE':
      return startsWithPercent(line);
    case 'BAD_ALIAS':
      return {
        message: 'This alias cannot be read.',
        expected: '* and the name of an anchor (&name) that stands further up',
        write: 'the values themselves, or the name of an anchor that is there',
      };
    case 'MULTIPLE_DOCS':
      return {
        message: 'The file holds more than one document.',
        expected: 'one scenario in a file',
        write: 'each scenario into a file of its own, without the line "---"',
      };
    case 'TAG_RESOLVE_FAILED':
      return {
        message: 'A word that starts with ! is taken as a YAML type, which a scenario does not need.',
        expected: 'a plain value',
        write: line.replace(/!\S+\s*/, ''),
      };
    case 'UNEXPECTED_TOKEN':
    case 'BAD_SCALAR_START':
    case 'IMPOSSIBLE':
      return {
        message: 'This does not fit where it stands.',
        expected:
          'one "key: value" on each line; a text with brackets, or one that starts with @ ` % & * ! | >, ' +
          'stands in quotes',
        write: quoted(line),
      };
    default:
      return {
        message: `This is not valid YAML: ${(error.message.split('\n')[0] ?? '').replace(/\.$/, '')}.`,
        expected: 'YAML 1.2',
        write: quoted(line),
      };
  }
}

function unclosed(closing: string, line: string): Omit<ProblemDetail, 'found'> {
  return {
    message: `What is opened here is never closed by ${closing}.`,
    expected: `${closing} at the end of what was opened`,
    write: `${line}${closing === '}' ? ' ' : ''}${closing}`,
  };
}

function startsWithPercent(line: string): Omit<ProblemDetail, 'found'> {
  return {
    message: 'A line that starts with % is taken as an instruction to the YAML reader.',
    expected: 'a key; a comment starts with #',
    write: `# ${line.replace(/^%+\s*/, '')}`,
  };
}

/** The line with its value in quotes. */
function quoted(line: string): string {
  const parts = /^((?:- )?[^:{[]+): +(.+)$/.exec(line);
  if (parts === null) return 'key: value';
  const inFlow = /^\{(.*?)([\w -]+): *([^,{}:]*\[.*?\][^,}]*)(.*)\}$/.exec(parts[2] ?? '');
  if (inFlow !== null)
    return `${parts[1]}: {${inFlow[1]}${inFlow[2]}: "${(inFlow[3] ?? '').trim()}"${inFlow[4]} }`;
  return `${parts[1]}: "${(parts[2] ?? '').replace(/"/g, "'")}"`;
}
