/** The interval of each value of one series of a chart, as lengths from the value on, in the unit of the chart. */
export interface ErrorBars {
  readonly plus: readonly number[];
  readonly minus: readonly number[];
}

function literal(name: 'plus' | 'minus', values: readonly number[]): string {
  const points = values.map((value, at) => `<c:pt idx="${at}"><c:v>${value}</c:v></c:pt>`).join('');
  return `<c:${name}><c:numLit><c:formatCode>General</c:formatCode><c:ptCount val="${values.length}"/>${points}</c:numLit></c:${name}>`;
}

/**
 * A bar chart of a slide with the intervals of its values as error bars, which the library that writes slides has no
 * words for. They stand before the categories of a series. Source: ISO/IEC 29500-1, Office Open XML, DrawingML charts,
 * CT_BarSer and CT_ErrBars.
 *
 * @param xml the chart, one series after the other
 * @param series intervals, as many as there are series
 */
export function withErrorBars(xml: string, series: readonly ErrorBars[]): string {
  let at = -1;
  return xml.replace(/<c:cat>/g, (found) => {
    at += 1;
    const bars = series[at];
    if (bars === undefined) return found;
    return `<c:errBars><c:errBarType val="both"/><c:errValType val="cust"/><c:noEndCap val="0"/>${literal('plus', bars.plus)}${literal('minus', bars.minus)}<c:spPr><a:ln w="15875"><a:solidFill><a:srgbClr val="1B242D"/></a:solidFill></a:ln></c:spPr></c:errBars>${found}`;
  });
}
