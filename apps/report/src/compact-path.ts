/** Steps of a drawing are tenths of a pixel: finer ones nobody sees. */
const STEPS = 10;

interface Point {
  readonly x: number;
  readonly y: number;
}

/**
 * The same polyline in fewer letters: relative steps of a tenth of a pixel, horizontal and vertical ones with one
 * number, points on the way of a straight step left out. Paths with curves come back as they are.
 *
 * @param path value of an attribute `d`, as vega writes it: absolute commands, a comma between coordinates
 */
export function compactPath(path: string): string {
  if (!/^M[\d.,MLZ-]*$/.test(path)) return path;
  let from: Point = { x: 0, y: 0 };
  let written = '';
  for (const part of path.split(/(?=M)/)) {
    const isClosed = part.endsWith('Z');
    const points = pointsOf(isClosed ? part.slice(0, -1) : part);
    const [first] = points;
    if (points.includes(null) || first === undefined || first === null) return path;
    const kept = withoutThoseOnTheWay(points as Point[]);
    // After a path is closed, the pen is back at its beginning.
    written += `m${pair(first.x - from.x, first.y - from.y)}`;
    let at = first;
    for (const point of kept.slice(1)) {
      written += step(point.x - at.x, point.y - at.y);
      at = point;
    }
    from = isClosed ? first : at;
    if (isClosed) written += 'z';
  }
  return written;
}

/** Points in whole steps; null where something else than two numbers stands. */
function pointsOf(path: string): (Point | null)[] {
  return path
    .slice(1)
    .split('L')
    .map((text) => {
      const [x = Number.NaN, y = Number.NaN, ...more] = text.split(',').map(Number);
      const isPoint = more.length === 0 && Number.isFinite(x) && Number.isFinite(y) && text !== '';
      return isPoint ? { x: Math.round(x * STEPS), y: Math.round(y * STEPS) } : null;
    });
}

/** Drops repeated points, and those on a horizontal or vertical way that goes on in the same direction. */
function withoutThoseOnTheWay(points: readonly Point[]): Point[] {
  const kept: Point[] = [];
  for (const point of points) {
    const [before, last] = [kept.at(-2), kept.at(-1)];
    // The only point of a path draws a dot where ends are round.
    if (last !== undefined && last.x === point.x && last.y === point.y && kept.length > 1) continue;
    if (before !== undefined && last !== undefined && goesOn(before, last, point)) kept.pop();
    kept.push(point);
  }
  return kept;
}

function goesOn(before: Point, last: Point, next: Point): boolean {
  const [dx, dy] = [last.x - before.x, last.y - before.y];
  const [ex, ey] = [next.x - last.x, next.y - last.y];
  return (dy === 0 && ey === 0 && dx * ex > 0) || (dx === 0 && ex === 0 && dy * ey > 0);
}

function step(dx: number, dy: number): string {
  if (dy === 0) return `h${number(dx)}`;
  if (dx === 0) return `v${number(dy)}`;
  return `l${pair(dx, dy)}`;
}

/** A minus sign parts numbers as well as a comma does. */
function pair(dx: number, dy: number): string {
  const y = number(dy);
  return `${number(dx)}${y.startsWith('-') ? '' : ','}${y}`;
}

function number(steps: number): string {
  return String(steps / STEPS).replace(/^(-?)0\./, '$1.');
}
