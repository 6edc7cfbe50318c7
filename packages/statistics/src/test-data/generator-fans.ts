import type { CensoredSample } from '../durations/censored-sample.ts';

/** Hours of 70 fans of diesel generators, 12 of which failed. Source: data set genfan of the R package survival; W. Nelson, Applied Life Data Analysis (1982). */
export const GENERATOR_FANS: CensoredSample = {
  values: [450, 1150, 1150, 1600, 2070, 2070, 2080, 3100, 3450, 4600, 6100, 8750],
  censored: [
    460, 1560, 1660, 1850, 1850, 1850, 1850, 1850, 2030, 2030, 2030, 2200, 3000, 3000, 3000, 3000, 3200, 3750,
    3750, 4150, 4150, 4150, 4150, 4300, 4300, 4300, 4300, 4850, 4850, 4850, 4850, 5000, 5000, 5000, 6100,
    6100, 6100, 6300, 6450, 6450, 6700, 7450, 7800, 7800, 8100, 8100, 8200, 8500, 8500, 8500, 8750, 8750,
    9400, 9900, 10100, 10100, 10100, 11500,
  ],
};
