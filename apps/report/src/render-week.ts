import type { WatchedWeek } from '@buildweek/results';
import { resetSVGDefIds } from 'vega';
import { html, jsonScript, nameText } from './html.ts';
import { pageOf } from './page.ts';
import { jobsOfWeekSection, longestJob, watchedWeekSection } from './week/watched-week-section.ts';

/**
 * The page of one week: every machine and person as a row, and one job traced through. It holds no code; everything
 * that comes from the scenario is text.
 *
 * @param week of one replication; it is embedded as JSON
 * @param traced number of the job that is traced, from 1; null takes the one that took longest
 * @param version of the program
 */
export function renderWeek(week: WatchedWeek, traced: number | null, version: string): string {
  resetSVGDefIds();
  const job = traced ?? longestJob(week)?.job ?? null;
  return pageOf({
    title: `Week ${week.week}: ${week.scenario}`,
    version,
    head: html`
<header class="head">
<div class="inside">
<p class="program">Buildweek · one week watched</p>
<h1>${nameText(week.scenario)}: week ${week.week} of ${week.weeks}</h1>
<p>One of many possible weeks: replication ${week.replication} as it was played. It shows how a job comes to wait; what
to expect of the lab is in the report.</p>
</div>
</header>`,
    sections: html`${watchedWeekSection(week, job)}${jobsOfWeekSection(week)}`,
    footer: html`Made by buildweek ${version}, seed “${week.seed}”, replication ${week.replication}. All names are those of the scenario.`,
    data: jsonScript('week', week),
  });
}
