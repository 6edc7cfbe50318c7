import { LivePage } from './live-page.ts';

const root = document.querySelector<HTMLElement>('[data-live]');
// Without these the page says that it needs them, and stays as it is.
if (root !== null && 'DecompressionStream' in globalThis && 'Worker' in globalThis) new LivePage(root);
