import type { Reply } from '../shared/messages.ts';
import type { PlayBase } from '../shared/play-base.ts';
import { AS_PLANNED, fragmentOf, isAsPlanned, stateOf } from '../shared/reader-state.ts';
import { dataOf, element } from './element.ts';
import { ChangeForm } from './form.ts';
import { saveText } from './save.ts';
import { Simulator } from './simulator.ts';
import { LiveView } from './view.ts';

/** Milliseconds after which what a reader has changed is put into words: they may still be typing. */
const PAUSE = 150;

/** The live part of the page: what a reader does goes to the workers, what these answer is shown. */
export class LivePage {
  private readonly form: ChangeForm;
  private readonly view: LiveView;
  private starting: Promise<Simulator> | null = null;
  private pause: ReturnType<typeof setTimeout> | undefined;
  private lastNumber = 0;
  /** Numbers of the requests that are still of interest. */
  private describing = 0;
  private playing = 0;
  private readonly drawing = new Map<number, string>();
  private isPrepared = false;
  private text: string | null = null;

  constructor(root: HTMLElement) {
    this.form = new ChangeForm(root);
    this.view = new LiveView(root, (chart) => this.draw(chart));
    element(root, 'off').hidden = true;
    this.form.form.hidden = false;
    // Whoever turns to the controls will ask something: the workers start meanwhile.
    for (const event of ['focusin', 'pointerdown']) {
      this.form.form.addEventListener(event, () => this.withSimulator(() => {}), { once: true });
    }
    this.form.form.addEventListener('input', () => this.changed());
    this.form.form.addEventListener('submit', (event) => {
      event.preventDefault();
      this.play();
    });
    element(root, 'stop').addEventListener('click', () => this.stop());
    element(root, 'reset').addEventListener('click', () => this.reset());
    element(root, 'save').addEventListener('click', () => {
      if (this.text !== null) saveText('changed-scenario.yaml', this.text);
    });
    element(root, 'save-plan').addEventListener('click', () => {
      saveText('scenario.yaml', (JSON.parse(dataOf('play-base')) as PlayBase).text);
    });
    addEventListener('hashchange', () => this.followLink(root));
    this.followLink(root);
  }

  /** An address may hold a change: it is set and played. */
  private followLink(root: HTMLElement): void {
    const state = stateOf(location.hash, this.form.bounds);
    if (state === null) return;
    this.form.state = state;
    root.scrollIntoView();
    if (isAsPlanned(state)) this.view.say('The link holds no change that this page knows.');
    else this.play();
  }

  private changed(): void {
    if (this.playing !== 0) this.stop();
    this.view.say('');
    clearTimeout(this.pause);
    this.pause = setTimeout(() => this.describe(), PAUSE);
  }

  private describe(): void {
    const number = ++this.lastNumber;
    const { state } = this.form;
    this.describing = number;
    this.withSimulator((simulator) => {
      simulator.ask({ kind: 'describe', number, state });
      if (this.isPrepared) return;
      this.isPrepared = true;
      simulator.ask({ kind: 'prepare' });
    });
  }

  private play(): void {
    clearTimeout(this.pause);
    const { state } = this.form;
    // What was typed may have been out of bounds.
    this.form.state = state;
    if (isAsPlanned(state)) {
      this.view.say('Change something first: this is the plan itself.');
      return;
    }
    history.replaceState(null, '', fragmentOf(state));
    this.describe();
    const number = ++this.lastNumber;
    this.playing = number;
    this.view.isPlaying = true;
    this.view.say('Playing both labs …');
    this.withSimulator((simulator) => simulator.ask({ kind: 'play', number, state }));
  }

  private stop(): void {
    if (this.playing === 0) return;
    this.done('Stopped.');
    this.withSimulator((simulator) => simulator.ask({ kind: 'stop' }));
  }

  private reset(): void {
    this.stop();
    this.form.state = AS_PLANNED;
    history.replaceState(null, '', location.pathname + location.search);
    this.view.clearAnswer();
    this.view.say('As in the plan.');
    this.describe();
  }

  private draw(chart: string): void {
    const number = ++this.lastNumber;
    this.drawing.set(number, chart);
    this.withSimulator((simulator) => simulator.ask({ kind: 'draw', number, chart }));
  }

  private done(words: string): void {
    this.playing = 0;
    this.view.isPlaying = false;
    this.view.say(words);
  }

  private withSimulator(action: (simulator: Simulator) => void): void {
    const failed = (message: string): void => this.done(`The simulator cannot go on here: ${message}`);
    this.starting ??= Simulator.start((reply) => this.hear(reply), failed);
    this.starting.then(action, (error: unknown) => failed(String(error)));
  }

  private hear(reply: Reply): void {
    switch (reply.kind) {
      case 'described':
        if (reply.number !== this.describing && reply.number !== this.playing) return;
        this.text = reply.text;
        this.view.showDescription(reply, this.linkOf());
        if (reply.number === this.playing) this.done('');
        return;
      case 'progress':
        if (reply.number === this.playing) this.view.showProgress(reply.done, reply.total);
        return;
      case 'answer':
        if (reply.number !== this.playing) return;
        this.view.showAnswer(reply);
        if (reply.isRough) this.view.say('A first answer is there; playing on for a sharper one …');
        else this.done(`Done: ${reply.replications} replications of each lab. The answer stands below.`);
        return;
      case 'drawn':
        this.view.showChart(this.drawing.get(reply.number) ?? '', reply.html);
        this.drawing.delete(reply.number);
        return;
      case 'failed':
        this.done(`This could not be played: ${reply.message}`);
        return;
    }
  }

  private linkOf(): string {
    return `${location.href.replace(/#.*$/s, '')}${fragmentOf(this.form.state)}`;
  }
}
