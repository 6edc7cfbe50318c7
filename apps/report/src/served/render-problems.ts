import type { Problem } from '@buildweek/scenario';
import { type Html, html, nameText } from '../html.ts';
import { pageOf } from '../page.ts';

/**
 * The page of a scenario that cannot be played: everything that is wrong with it, with its place.
 *
 * @param file name of the scenario file
 * @param problems in the order of the lines
 * @param version of the program
 */
export function renderProblems(file: string, problems: readonly Problem[], version: string): string {
  const errors = problems.filter(({ severity }) => severity === 'error').length;
  return pageOf({
    title: `Errors in ${file}`,
    version,
    head: html`
<header class="head">
<div class="inside">
<p class="program">Buildweek · scenario</p>
<h1>${nameText(file)}</h1>
<p class="answer long">${errors === 1 ? 'There is 1 error' : `There are ${errors} errors`} in this scenario.</p>
<p>Mend the file and save it; this page looks again by itself.</p>
</div>
</header>`,
    sections: html`
<section id="problems" aria-labelledby="problems-title">
<h2 id="problems-title">What is wrong, and what to write instead</h2>
<ol class="problems">${problems.map(problemItem)}</ol>
</section>`,
    footer: html`Made by buildweek ${version}.`,
    data: html``,
  });
}

function problemItem(problem: Problem, index: number): Html {
  const { severity, line, column, length, sourceLine, message, found, expected, write } = problem;
  const start = column - 1;
  const id = `problem-${index + 1}`;
  return html`
<li>
<h3 id="${id}">Line ${line}, column ${column}: ${severity === 'error' ? '' : 'warning: '}${message}</h3>
<pre role="group" tabindex="0" aria-labelledby="${id}"><span class="line">${line}</span> ${sourceLine.slice(0, start)}<mark>${sourceLine.slice(start, start + length) || ' '}</mark>${sourceLine.slice(start + length)}</pre>
<dl class="origin">${(
    [
      ['found', found],
      ['expected', expected],
      ['write', write],
    ] as const
  ).flatMap(([term, text]) =>
    text === '' ? [] : [html`<div><dt>${term}</dt><dd><bdi>${text}</bdi></dd></div>`],
  )}</dl>
</li>`;
}
