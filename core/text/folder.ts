/** The folder of a file by its address, with the stroke at its end. */
export function folderOf(uri: string): string {
  return uri.slice(0, uri.lastIndexOf('/') + 1);
}
