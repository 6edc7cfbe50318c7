import { z } from 'zod';

// Schemas are interpreted, never compiled: a page that forbids eval can read scenarios.
z.config({ jitless: true });

export { z };
