import { expect, it } from 'vitest';
import { refusal } from '../fixture/refusal.ts';
import { keptJobs } from './kept-jobs.ts';

it('an endless backlog is a number of jobs that are there at any time', () => {
  expect(keptJobs('4 jobs')).toBe(4);
  expect(keptJobs('1 job')).toBe(1);
  expect(refusal(keptJobs, '4').write).toBe('4 jobs');
  expect(refusal(keptJobs, 'many').write).toBe('4 jobs');
  expect(refusal(keptJobs, '0 jobs').message).toContain('from 1 up');
});
