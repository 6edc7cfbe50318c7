import type { YAMLError } from 'yaml';
import type { ProblemDetail, SourceText } from './source-text.ts';

/** Says in the words of the reader what the YAML parser did not like. */
export function explain(error: YAMLError, source: SourceText): ProblemDetail {
  const text = source.lineText(source.placeOf(error.pos[0]).line);
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
        : /directives-end/.test(error.message)
          ? startsWithPercent(line)
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
    message: `A closing ${closing} is missing in this line or above it.`,
    expected: `${closing} at the end of what was opened`,
    write:
      /[[{"']/.test(line) && !line.endsWith(closing)
        ? `${line}${closing === '}' ? ' ' : ''}${closing}`
        : `${closing}`,
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
  const inFlow = /^\{(.*?)([\w -]+): *(.*\[.*\][^,}]*)(.*)\}$/.exec(parts[2] ?? '');
  if (inFlow !== null)
    return `${parts[1]}: {${inFlow[1]}${inFlow[2]}: "${(inFlow[3] ?? '').trim()}"${inFlow[4]} }`;
  return `${parts[1]}: "${(parts[2] ?? '').replace(/"/g, "'")}"`;
}
