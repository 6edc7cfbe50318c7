import { createInProcessExecutor } from '@buildweek/study';
import { describe, expect, test } from 'vitest';
import { SMALL_BASE } from '../fixture/small-base.ts';
import type { Reply } from '../shared/messages.ts';
import { AS_PLANNED } from '../shared/reader-state.ts';
import { Director } from './director.ts';

const THREE = { ...AS_PLANNED, counts: { 'people/hands': 3 } };
type Answer = Extract<Reply, { kind: 'answer' }>;

function director(): { readonly replies: Reply[]; readonly director: Director } {
  const replies: Reply[] = [];
  const turn = (): Promise<void> => new Promise((resolve) => setTimeout(resolve));
  const executor = createInProcessExecutor(turn);
  return { replies, director: new Director(SMALL_BASE, executor, (reply) => replies.push(reply)) };
}

describe('The director of the page', () => {
  test('gives a rough answer and a sharper one, and says how far it is', async () => {
    const { director: asked, replies } = director();
    await asked.ask({ kind: 'play', number: 7, state: THREE });
    const answers = replies.filter((reply): reply is Answer => reply.kind === 'answer');
    expect(answers.map(({ number, isRough, replications }) => [number, isRough, replications])).toEqual([
      [7, true, 20],
      [7, false, 24],
    ]);
    expect(answers[1]?.sentence).toMatch(/^“with your change” against “as it is”: /);
    expect(answers[1]?.html).toContain('id="live-pair-1-table"');
    const progress = replies.flatMap((reply) => (reply.kind === 'progress' ? [reply.done] : []));
    expect(progress).toHaveLength(48);
    expect(progress.at(-1)).toBe(48);
    await asked.ask({ kind: 'draw', number: 8, chart: 'lead-times' });
    const drawn = replies.at(-1);
    expect(drawn?.kind === 'drawn' ? drawn.html.match(/<svg/g) : null).toHaveLength(2);
  });

  test('gives the same answer when the plan was played before', async () => {
    const [one, other] = [director(), director()];
    await one.director.ask({ kind: 'play', number: 1, state: THREE });
    await other.director.ask({ kind: 'prepare' });
    await other.director.ask({ kind: 'play', number: 1, state: THREE });
    const last = ({ replies }: ReturnType<typeof director>): unknown => replies.at(-1);
    expect(last(other)).toEqual(last(one));
  });

  test('falls silent when it is stopped, and answers again', async () => {
    const { director: asked, replies } = director();
    const playing = asked.ask({ kind: 'play', number: 1, state: THREE });
    await asked.ask({ kind: 'stop' });
    await playing;
    expect(replies.filter(({ kind }) => kind === 'answer')).toEqual([]);
    await asked.ask({ kind: 'play', number: 2, state: THREE });
    expect(replies.filter(({ kind }) => kind === 'answer')).toHaveLength(2);
  });

  test('says in words what a change comes to, or what is wrong with it', async () => {
    const { director: asked, replies } = director();
    await asked.ask({ kind: 'describe', number: 1, state: THREE });
    await asked.ask({ kind: 'play', number: 2, state: { ...AS_PLANNED, counts: { 'machines/printer': 0 } } });
    expect(replies).toEqual([
      {
        kind: 'described',
        number: 1,
        wordings: ['people / hands / count: 3'],
        reasons: [],
        text: SMALL_BASE.text.replace('count: 2, hours', 'count: 3, hours'),
        command:
          'buildweek compare scenario.yaml --with "people / hands / count: 3" --replications 24 --seed two --weeks 1 --ignored-weeks 0',
      },
      expect.objectContaining({ kind: 'described', number: 2, text: null, command: null }),
    ]);
  });
});
