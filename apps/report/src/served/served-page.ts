import { createHash } from 'node:crypto';
import { Html, html } from '../html.ts';
import { bundles } from '../live/bundles.ts';

/**
 * A page as it is served while its file may change: it listens to where it came from, and to nobody else, and loads
 * itself anew when there is another version of it.
 *
 * @param page as any `render…` has made it
 * @param version of what is served, so that a page that missed the news hears of it
 */
export function servedPage(page: string, version: number): string {
  const script = bundles().follow;
  const hash = `'sha256-${createHash('sha256').update(script).digest('base64')}'`;
  const element = html`<script data-version="${version}">${new Html(script)}</script>`.source;
  // The policy stands in the head, before anything that comes from a scenario.
  return page
    .replace(
      /(http-equiv="Content-Security-Policy" content=")([^"]*)"/,
      (_, start: string, policy: string) => {
        const scripts = policy.includes('script-src ')
          ? policy.replace('script-src ', `script-src ${hash} `)
          : `${policy}; script-src ${hash}`;
        return `${start}${scripts}; connect-src &#39;self&#39;"`;
      },
    )
    .replace(/<\/body>\s*<\/html>\s*$/, () => `${element}\n</body>\n</html>\n`);
}
