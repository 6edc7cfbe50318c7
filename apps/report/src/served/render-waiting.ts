import { html, nameText } from '../html.ts';
import { pageOf } from '../page.ts';

/**
 * What is seen while a scenario is played for the first time.
 *
 * @param name of the scenario
 * @param message what goes on, one sentence; or why nothing does
 * @param version of the program
 */
export function renderWaiting(name: string, message: string, version: string): string {
  return pageOf({
    title: name,
    version,
    head: html`
<header class="head">
<div class="inside">
<p class="program">Buildweek</p>
<h1>${nameText(name)}</h1>
<p class="answer long" role="status" data-progress-words>${message}</p>
</div>
</header>`,
    sections: html``,
    footer: html`Made by buildweek ${version}.`,
    data: html``,
  });
}
