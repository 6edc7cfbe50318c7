const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** A maximum, and where it is. */
export interface Maximum {
  readonly at: number;
  readonly value: number;
}

/**
 * The maximum of a function with one peak between two bounds, by golden section.
 * Source: J. Kiefer, "Sequential minimax search for a maximum", Proceedings of the American Mathematical Society 4 (1953),
 * 502–506.
 *
 * @param tolerance width of the bracket at which the search ends
 */
export function maximize(of: (at: number) => number, low: number, high: number, tolerance: number): Maximum {
  let [left, right] = [low, high];
  let inner = right - GOLDEN * (right - left);
  let outer = left + GOLDEN * (right - left);
  let [atInner, atOuter] = [of(inner), of(outer)];
  while (right - left > tolerance) {
    if (atInner >= atOuter) {
      right = outer;
      [outer, atOuter] = [inner, atInner];
      inner = right - GOLDEN * (right - left);
      atInner = of(inner);
    } else {
      left = inner;
      [inner, atInner] = [outer, atOuter];
      outer = left + GOLDEN * (right - left);
      atOuter = of(outer);
    }
  }
  return atInner >= atOuter ? { at: inner, value: atInner } : { at: outer, value: atOuter };
}

/**
 * Where an increasing function is 0, by bisection; a bound where it is not 0 between them.
 * @param tolerance width of the bracket at which the search ends; 0: as near as doubles come
 */
export function root(of: (at: number) => number, low: number, high: number, tolerance = 0): number {
  let [left, right] = [low, high];
  for (let step = 0; step < 200 && right - left > tolerance; step++) {
    const middle = (left + right) / 2;
    if (middle === left || middle === right) break;
    if (of(middle) < 0) left = middle;
    else right = middle;
  }
  return (left + right) / 2;
}
