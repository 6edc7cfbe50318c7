import type { JobStory } from '@buildweek/study';
import type { Style } from '../terminal/style.ts';
import { numbers, tableText, words } from '../terminal/table.ts';
import type { StoryClock } from './story-clock.ts';
import { hoursOf, jobNumber, promiseOf, WAITS_FOR, workOf } from './story-words.ts';

/** The slowest jobs of a replication, one line each. */
export function storyList(stories: readonly JobStory[], clock: StoryClock, style: Style): string {
  const columns = [
    numbers('job'),
    words('part'),
    numbers('pieces'),
    words('priority'),
    words('arrived'),
    words('finished'),
    numbers('hours'),
    words('promised'),
    words('promise'),
    words('most of it'),
  ];
  return tableText(
    columns,
    stories.map((story) => ({
      cells: [
        String(jobNumber(story.job)),
        story.part,
        String(story.pieces),
        story.rush ? 'rush' : 'normal',
        clock.moment(story.arrivedAt),
        story.outcome === 'finished' ? clock.moment(story.until) : 'not finished',
        `${story.outcome === 'finished' ? '' : 'over '}${hoursOf(story.until - story.arrivedAt)}`,
        story.dueAt === null ? 'nothing' : clock.moment(story.dueAt),
        verdictOf(story),
        mostOf(story),
      ],
    })),
    style,
  );
}

function verdictOf(story: JobStory): string {
  const verdict = promiseOf(story);
  if (verdict !== 'missed' || story.dueAt === null) return verdict;
  return `late by ${story.outcome === 'finished' ? '' : 'over '}${hoursOf(story.until - story.dueAt)} h`;
}

function mostOf(story: JobStory): string {
  const { hours } = story;
  const [longest] = hours.waits;
  return longest === undefined || longest.milliseconds < hours.work
    ? `${workOf(story)}, ${hoursOf(hours.work)} h`
    : `waits for ${WAITS_FOR[longest.cause]}, ${hoursOf(longest.milliseconds)} h`;
}
