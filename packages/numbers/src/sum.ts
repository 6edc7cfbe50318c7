/**
 * The sum of the values, as exact as if it had been carried out with twice the digits and rounded at the end.
 * Source: A. Neumaier, "Rundungsfehleranalyse einiger Verfahren zur Summation endlicher Summen", Zeitschrift
 * für Angewandte Mathematik und Mechanik 54 (1974), 39–51.
 * @returns 0 for no values; when a value is infinite or not a number, what plain addition gives
 */
export function sum(values: ArrayLike<number>): number {
  let total = 0;
  let lost = 0;
  for (let index = 0; index < values.length; index++) {
    const value = values[index] as number;
    const next = total + value;
    lost += Math.abs(total) >= Math.abs(value) ? total - next + value : value - next + total;
    total = next;
  }
  return Number.isFinite(total) ? total + lost : total;
}
