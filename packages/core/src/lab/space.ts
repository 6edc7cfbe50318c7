/** Space sums are compared with this tolerance: 24 pieces of 1/24 fill a platform. */
export const SPACE_TOLERANCE = 1e-9;
