import { nearest } from '../nearest.ts';

/** Keys beside days and names of hours. */
export const HOURS_KEYS = ['closed', 'extra'] as const;

const HABITS = [
  'bank holidays',
  'closed days',
  'closing days',
  'days off',
  'holiday',
  'holidays',
  'public holidays',
  'shutdown',
  'vacation',
];

/** @returns the key for days without work, or for additional hours, that was probably meant; null: neither */
export function hoursKeyMeant(key: string): string | null {
  return HABITS.includes(key.toLowerCase()) ? 'closed' : nearest(key, HOURS_KEYS);
}
