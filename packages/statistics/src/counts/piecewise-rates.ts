/** A stretch of cells with one rate. */
export interface RatePiece {
  /** First cell, and the first behind the last. */
  readonly from: number;
  readonly to: number;
}

/** The best division into some number of pieces. */
export interface Pieces {
  readonly pieces: readonly RatePiece[];
  /** Twice the negative log-likelihood, without what is the same for all divisions. */
  readonly deviance: number;
}

/**
 * Divides a row of Poisson counts into stretches of one rate each, for every number of stretches the division with the
 * highest likelihood, by dynamic programming.
 * Source: J. V. Braun, R. K. Braun and H.-G. Müller, "Multiple changepoint fitting via quasilikelihood, with application
 * to DNA sequence segmentation", Biometrika 87 (2000), 301–314.
 * @param exposure of each cell, all the same and positive
 * @returns divisions into 1, 2, … pieces, up to `most` or the number of cells
 */
export function piecewiseRates(counts: readonly number[], exposure: number, most: number): Pieces[] {
  const cells = counts.length;
  const sums = [0];
  for (const count of counts) sums.push((sums.at(-1) ?? 0) + count);
  const cost = (from: number, to: number): number => {
    const events = (sums[to] ?? 0) - (sums[from] ?? 0);
    return events === 0 ? 0 : -2 * events * Math.log(events / (exposure * (to - from)));
  };
  // best[pieces - 1][end]: least cost of the cells before `end`, and where the last piece begins.
  const best: { cost: number; from: number }[][] = [];
  for (let pieces = 1; pieces <= Math.min(most, cells); pieces++) {
    const row: { cost: number; from: number }[] = [];
    for (let end = 0; end <= cells; end++) {
      let found = { cost: pieces === 1 && end > 0 ? cost(0, end) : Number.POSITIVE_INFINITY, from: 0 };
      if (pieces > 1) {
        for (let from = pieces - 1; from < end; from++) {
          const total = (best[pieces - 2]?.[from]?.cost ?? 0) + cost(from, end);
          if (total < found.cost) found = { cost: total, from };
        }
      }
      row.push(found);
    }
    best.push(row);
  }
  return best.map((row, index) => {
    const pieces: RatePiece[] = [];
    let end = cells;
    for (let level = index; level >= 0; level--) {
      const from = level === 0 ? 0 : (best[level]?.[end]?.from ?? 0);
      pieces.unshift({ from, to: end });
      end = from;
    }
    return { pieces, deviance: row[cells]?.cost ?? 0 };
  });
}
