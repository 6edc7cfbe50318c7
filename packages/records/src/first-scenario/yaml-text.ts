/** Any text as a value or a key of YAML: as it is where that is safe, as a string of JSON otherwise. */
export function yamlText(text: string): string {
  const isPlain = /^\p{L}[\p{L}\p{N} _.-]*$/u.test(text) && !text.endsWith(' ');
  return isPlain && !/^(yes|no|true|false|null|none|y|n|on|off)$/i.test(text) ? text : JSON.stringify(text);
}
