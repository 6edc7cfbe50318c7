import { z } from 'zod';

// The policy of the page forbids evaluated code; the validator would try it when the first schema is made. So this
// file is imported before everything else.
z.config({ jitless: true });
