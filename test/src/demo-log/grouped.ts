/** Entries by a key, in their order; those without one are left out. */
export function grouped<Entry, Key>(
  entries: readonly Entry[],
  keyOf: (entry: Entry) => Key | null,
): Map<Key, Entry[]> {
  const groups = new Map<Key, Entry[]>();
  for (const entry of entries) {
    const key = keyOf(entry);
    if (key === null) continue;
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [entry]);
    else group.push(entry);
  }
  return groups;
}
