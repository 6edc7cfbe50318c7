import { EXIT } from './failure.ts';

/**
 * Turns the first Ctrl-C (or request to end) into a signal, so that finished work can be reported; the second ends
 * the program at once.
 */
export function stopOnSignal(): { readonly signal: AbortSignal; forget(): void } {
  const controller = new AbortController();
  const stop = (): void => {
    if (controller.signal.aborted) process.exit(EXIT.stopped);
    controller.abort();
  };
  process.on('SIGINT', stop);
  process.on('SIGTERM', stop);
  return {
    signal: controller.signal,
    forget: () => {
      process.off('SIGINT', stop);
      process.off('SIGTERM', stop);
    },
  };
}
