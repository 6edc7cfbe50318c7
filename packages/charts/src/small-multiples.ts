/** Where a small chart stands among its like: only the outer ones carry axis titles. */
export interface Place {
  readonly left: boolean;
  readonly bottom: boolean;
}

/** The place of the n-th of some charts that are set out in rows. */
export function placeOf(index: number, count: number, columns: number): Place {
  return { left: index % columns === 0, bottom: index + columns >= count };
}
