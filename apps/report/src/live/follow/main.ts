/** Listens to where a served page came from: how far its playing is, and when there is another version of it. */

const { version = '' } = document.currentScript?.dataset ?? {};
const words = document.querySelector('[data-progress-words]');
const news = new EventSource(`/changes?version=${encodeURIComponent(version)}`);

news.addEventListener('reload', () => {
  news.close();
  location.reload();
});
news.addEventListener('progress', ({ data }: MessageEvent<string>) => {
  if (words !== null) words.textContent = data;
});

export {};
