/**
 * Where the project is published: the one place that says it. Fill in a row when the place exists and is ours, never
 * before, and run `npm run generate`; what is empty is left out of both packages and of the pages. An address that
 * nobody holds yet, or a name that nobody has claimed, is a door for somebody else.
 */
export const publish: Publish = {
  repository: undefined,
  bugs: undefined,
  homepage: undefined,
  files: undefined,
  claimed: { npm: false, gallery: false, openGallery: false },
};

export interface Publish {
  /** The address git clones from, `https:` and ending in `.git`. */
  readonly repository: string | undefined;
  /** The page where anybody may report a fault. */
  readonly bugs: string | undefined;
  /** The page that says what Doughwright is. */
  readonly homepage: string | undefined;
  /**
   * The addresses that a path of the repository is put behind: of its pages, and of its pictures as they are. They make the
   * links whole that the gallery shows.
   */
  readonly files: { readonly pages: string; readonly pictures: string } | undefined;
  /** Under which names a stranger gets our packages: the name in package.json, held by us in the registry meant. */
  readonly claimed: { readonly npm: boolean; readonly gallery: boolean; readonly openGallery: boolean };
}

/** The fields of both packages that say where the project is; an unpublished project has none. */
export function addressFields({ repository, bugs, homepage }: Publish): Readonly<Record<string, unknown>> {
  return {
    ...(repository !== undefined && { repository: { type: 'git', url: repository } }),
    ...(bugs !== undefined && { bugs: { url: bugs } }),
    ...(homepage !== undefined && { homepage }),
  };
}

/**
 * How `vsce` packages the extension without being told on the command line: all that runs is bundled already, and the gallery
 * has a page of its own.
 */
export function packerFields({ repository, files }: Publish): Readonly<Record<string, unknown>> {
  return {
    dependencies: false,
    readmePath: galleryPages.readme.to,
    changelogPath: galleryPages.changes.to,
    ...(repository === undefined && { allowMissingRepository: true }),
    ...(files !== undefined && { baseContentUrl: files.pages, baseImagesUrl: files.pictures }),
  };
}

/** Where the build writes the pages that the gallery shows, from the folder of the project, and what each is made of. */
export const galleryPages = {
  readme: { from: 'docs/market.md', to: 'dist/market.md' },
  changes: { from: 'CHANGELOG.md', to: 'dist/changes.md' },
} as const;

/**
 * A page as it goes into the extension's package. With an address for its links it stays as it is, and `vsce` puts the address
 * before them. A gallery shows no picture without one, and `vsce` refuses it: then a relative link or picture whose file
 * `isPackaged` becomes a link by reference to it, and of any other the words stay.
 */
export function galleryPage(page: string, { files }: Publish, isPackaged: (path: string) => boolean): string {
  if (files !== undefined) return page;
  const targets: string[] = [];
  const text = page.replace(
    /(!?)\[([^\]]*)\]\((?!\w+:|#)([^)]+)\)/g,
    (_, picture: string, words: string, target: string) => {
      if (!isPackaged(target.replace(/#.*/, ''))) return words;
      targets.push(target);
      return `[${picture === '' ? '' : 'Picture: '}${words}][${targets.length}]`;
    },
  );
  const references = targets.map((target, index) => `[${index + 1}]: ${target}\n`);
  return references.length === 0 ? text : `${text.trimEnd()}\n\n${references.join('')}`;
}

/** What has to be so before strangers are given a release, and is not yet; a sentence each. */
export function notYet({ repository, bugs, files, claimed }: Publish): string[] {
  return [
    ...(repository === undefined ? ['The packages name no repository.'] : []),
    ...(bugs === undefined ? ['The packages name no page for reports.'] : []),
    ...(files === undefined ? ['The links of the gallery’s page lead only into the package.'] : []),
    ...(claimed.npm ? [] : ['The name on npm is not claimed.']),
    ...(claimed.gallery ? [] : ['The publisher in the gallery of VS Code is not claimed.']),
    ...(claimed.openGallery ? [] : ['The name in the open gallery is not claimed.']),
  ];
}
