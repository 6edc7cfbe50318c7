import type { Reply } from '../shared/messages.ts';
import { element } from './element.ts';
import { trusted } from './trusted.ts';

/** The chart that is open when nobody has opened another. */
const FIRST_CHART = 'lead-times';

type Described = Extract<Reply, { kind: 'described' }>;
type Answer = Extract<Reply, { kind: 'answer' }>;

/** What the live part shows beside its controls. */
export class LiveView {
  private readonly status: HTMLElement;
  private readonly progress: HTMLProgressElement;
  private readonly play: HTMLButtonElement;
  private readonly stop: HTMLButtonElement;
  private readonly refused: HTMLElement;
  private readonly reasons: HTMLElement;
  private readonly words: HTMLElement;
  private readonly command: HTMLElement;
  private readonly link: HTMLInputElement;
  private readonly answer: HTMLElement;
  private openCharts: ReadonlySet<string> = new Set([FIRST_CHART]);

  /** @param onChart called when a chart is to be seen that is not drawn yet */
  constructor(root: ParentNode, onChart: (chart: string) => void) {
    this.status = element(root, 'status');
    this.progress = element(root, 'progress');
    this.play = element(root, 'play');
    this.stop = element(root, 'stop');
    this.refused = element(root, 'refused');
    this.reasons = element(root, 'reasons');
    this.words = element(root, 'words');
    this.command = element(root, 'command');
    this.link = element(root, 'link');
    this.answer = element(root, 'answer');
    // The event does not bubble, so it is caught on its way down.
    const opened = ({ target }: Event): void => {
      if (!(target instanceof HTMLDetailsElement)) return;
      const { chart } = target.dataset;
      if (chart !== undefined && target.open && target.querySelector('.beside') === null) onChart(chart);
    };
    this.answer.addEventListener('toggle', opened, true);
    this.link.addEventListener('focus', () => this.link.select());
  }

  say(text: string): void {
    this.status.textContent = text;
  }

  /** While the lab is played there is something to stop; what was playing is not asked for again. */
  set isPlaying(isPlaying: boolean) {
    const hadFocus = document.activeElement === this.play || document.activeElement === this.stop;
    this.play.disabled = isPlaying;
    this.stop.hidden = !isPlaying;
    this.progress.hidden = !isPlaying;
    if (isPlaying) this.progress.removeAttribute('value');
    // A button that goes away would take the focus of the keyboard with it.
    if (hadFocus) (isPlaying ? this.stop : this.play).focus({ preventScroll: true });
  }

  showProgress(done: number, total: number): void {
    this.progress.value = total === 0 ? 0 : done / total;
  }

  showDescription({ reasons, command }: Described, link: string): void {
    this.refused.hidden = reasons.length === 0;
    this.reasons.textContent = reasons.join('\n\n');
    this.words.hidden = command === null;
    this.command.textContent = command ?? '';
    this.link.value = link;
  }

  showAnswer({ sentence, html, isRough, replications }: Answer): void {
    const shown = [...this.answer.querySelectorAll<HTMLDetailsElement>('details[data-chart]')];
    if (shown.length > 0) {
      this.openCharts = new Set(shown.flatMap(({ open, dataset }) => (open ? [dataset.chart ?? ''] : [])));
    }
    // The page keeps its height while charts are drawn anew, so that nobody is thrown off the place that they read.
    this.answer.style.minHeight = `${this.answer.offsetHeight}px`;
    this.answer.hidden = false;
    this.answer.innerHTML = trusted.createHTML(html);
    const state = document.createElement('p');
    state.className = 'live-state';
    state.textContent = isRough
      ? `A first answer, from ${replications} replications of each lab. A sharper one is coming.`
      : `From ${replications} replications of each lab.`;
    const words = document.createElement('p');
    words.className = 'live-sentence';
    words.textContent = sentence;
    this.answer.prepend(words, state);
    for (const details of this.answer.querySelectorAll<HTMLDetailsElement>('details[data-chart]')) {
      details.open = this.openCharts.has(details.dataset.chart ?? '');
    }
  }

  showChart(chart: string, html: string): void {
    const details = this.answer.querySelector(`details[data-chart="${CSS.escape(chart)}"]`);
    if (details === null) return;
    details.querySelector('.beside')?.remove();
    details.insertAdjacentHTML('beforeend', trusted.createHTML(html));
    this.answer.style.minHeight = '';
  }

  clearAnswer(): void {
    this.answer.hidden = true;
    this.answer.replaceChildren();
  }
}
