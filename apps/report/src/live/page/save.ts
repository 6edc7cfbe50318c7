/** Gives a text to the reader as a file. */
export function saveText(name: string, text: string): void {
  const link = document.createElement('a');
  const url = URL.createObjectURL(new Blob([text], { type: 'application/yaml' }));
  link.href = url;
  link.download = name;
  link.click();
  // The browser has taken it by then.
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}
