/**
 * Lines as paths, and neighbours that are drawn alike as one path: the same picture in fewer elements. What is seen
 * through stays apart, because where two of them overlap they are darker.
 *
 * @param svg as vega writes it, with paths as `compactPath` leaves them
 */
export function mergePaths(svg: string): string {
  return svg
    .replace(
      /<line(?: transform="translate\(([-\d.]+),([-\d.]+)\)")? x2="([-\d.]+)" y2="([-\d.]+)"([^>]*)\/>/g,
      (_, x = '0', y = '0', dx: string, dy: string, rest: string) =>
        `<path d="m${x},${y}${step(dx, dy)}"${rest}/>`,
    )
    .replace(/(?:<path d="[^"]*"[^>]*\/>){2,}/g, (run) => {
      const merged: { path: string; rest: string }[] = [];
      for (const [, path = '', rest = ''] of run.matchAll(/<path d="([^"]*)"([^>]*)\/>/g)) {
        const last = merged.at(-1);
        if (last !== undefined && last.rest === rest && !/opacity|transform/.test(rest)) {
          // A small m at the beginning of a path means the same as a large one; further on it does not.
          last.path += path.replace(/^m/, 'M');
        } else merged.push({ path, rest });
      }
      return merged.map(({ path, rest }) => `<path d="${path}"${rest}/>`).join('');
    });
}

function step(dx: string, dy: string): string {
  if (Number(dy) === 0) return `h${dx}`;
  return Number(dx) === 0 ? `v${dy}` : `l${dx},${dy}`;
}
