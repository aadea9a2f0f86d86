/** Gives every node of a section an id of its own: the second of one name is `name 2`. */
export function nodeIds(): (...names: readonly string[]) => string {
  const seen = new Map<string, number>();
  return (...names) => {
    const id = names.join('/');
    const count = (seen.get(id) ?? 0) + 1;
    seen.set(id, count);
    return count === 1 ? id : `${id} ${count}`;
  };
}
