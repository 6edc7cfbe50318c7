import { readFileSync } from 'node:fs';
import { badInput } from '../failure.ts';

const CODES: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file',
  EISDIR: 'that is a folder, not a file',
  ENOTDIR: 'what it is to be in is no folder',
  EACCES: 'permission is denied',
  EPERM: 'permission is denied',
  EROFS: 'nothing can be written there',
  ENOSPC: 'the disk is full',
};

/**
 * The text of a file, or of standard input for `-`.
 * @param what what it is expected to be, for the message
 * @throws Failure for bad input when it cannot be read
 */
export function readText(path: string, what: string): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(readFileSync(path === '-' ? 0 : path));
  } catch (error) {
    throw badInput(`Cannot read the ${what} ${path}: ${reasonOf(error)}.`);
  }
}

/** Why the file system, or the decoder, would not do it. */
export function reasonOf(error: unknown): string {
  if (error instanceof TypeError) return 'it is not text in UTF-8';
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  return CODES[code] ?? (error instanceof Error ? error.message : String(error));
}

/** Whether the file system would not do it. */
export function isFileError(error: unknown): boolean {
  return error instanceof Error && 'syscall' in error;
}
