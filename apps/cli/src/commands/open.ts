import { availableParallelism } from 'node:os';
import { basename } from 'node:path';
import { Command } from 'commander';
import { badInput } from '../failure.ts';
import { readText, reasonOf } from '../files/read-file.ts';
import { followFile } from '../open/file-follower.ts';
import { PageServer } from '../open/page-server.ts';
import { pageOfFile, QUICK_REPLICATIONS } from '../open/shown-file.ts';
import { programVersion } from '../program-version.ts';
import { stopOnSignal } from '../stop-on-signal.ts';
import { WorkerExecutor } from '../workers/worker-executor.ts';
import { wholeNumberOption } from './option-values.ts';

interface OpenOptions {
  readonly port: number;
  readonly replications: number;
  readonly workers?: number;
}

export function openCommand(): Command {
  return new Command('open')
    .summary('show the page of a scenario, and show it anew when the file changes')
    .description(
      'Serves the page of a scenario, or of results, to the browser of this computer and to nobody else. A scenario is played quickly; when its file is saved, the page shows it as it is then, or what is wrong with it, with line and column. Ctrl-C ends it.',
    )
    .argument('<file>', 'scenario file (YAML) or results file (JSON)')
    .option('--port <number>', 'port to listen on (default: a free one)', wholeNumberOption(1), 0)
    .option(
      '--replications <number>',
      'play so many replications, at least 20',
      wholeNumberOption(QUICK_REPLICATIONS),
      QUICK_REPLICATIONS,
    )
    .option('--workers <number>', 'threads to play on (default: one for each core)', wholeNumberOption(1))
    .addHelpText(
      'after',
      '\nExamples:\n  buildweek open scenarios/demo.yaml\n  buildweek open demo.json --port 8080',
    )
    .action(open);
}

async function open(path: string, options: OpenOptions): Promise<void> {
  if (path === '-') throw badInput('Only a file can be opened: it is looked at again when it changes.');
  readText(path, 'file');
  const { renderWaiting, servedPage } = await import('@buildweek/report');
  let version = 1;
  const waiting = renderWaiting(basename(path), 'Reading the file …', programVersion());
  const server = new PageServer({ html: servedPage(waiting, version), version });
  const { signal, forget } = stopOnSignal();
  const executor = new WorkerExecutor(options.workers ?? availableParallelism());
  let playing = new AbortController();
  let fail: (mistake: unknown) => void = () => {};
  const end = new Promise<void>((resolve, reject) => {
    signal.addEventListener('abort', () => resolve());
    fail = reject;
  });
  const show = async (): Promise<void> => {
    playing.abort();
    playing = new AbortController();
    const { signal: stop } = playing;
    const { replications } = options;
    const onProgress = (words: string): void => server.progress(words);
    const page = await pageOfFile(path, { replications, executor, onProgress }, stop);
    if (page === null || stop.aborted) return;
    version++;
    server.show({ html: servedPage(page, version), version });
  };
  const showOrEnd = (): void => {
    show().catch(fail);
  };
  const unfollow = followFile(path, showOrEnd);
  try {
    const address = await listening(server, options.port);
    process.stdout.write(
      `${basename(path)} is on ${address} for the browser of this computer. Ctrl-C ends it.\n`,
    );
    showOrEnd();
    await end;
  } finally {
    unfollow();
    forget();
    playing.abort();
    await server.close();
    await executor.close();
  }
}

async function listening(server: PageServer, port: number): Promise<string> {
  try {
    return await server.listen(port);
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? error.code : null;
    const reason = code === 'EADDRINUSE' ? 'something else listens on it' : reasonOf(error);
    throw badInput(`Port ${port} cannot be had: ${reason}. Give another one, or leave --port out.`);
  }
}
