import type { FileEdit } from '../features/answers.ts';
import { type DefinitionAnswer, definitionAt, typeDefinitionAt } from '../features/definitions.ts';
import { type GoesItem, type GoesLink, goesIntoAt, goesItemAt, usersOf } from '../features/goes-into.ts';
import { type Lens, lensesOf, type Uses, usesAt } from '../features/lenses.ts';
import { type RuleLink, ruleLinksOf } from '../features/links.ts';
import { type Highlight, highlightsAt, type Reference, referencesAt } from '../features/references.ts';
import { type Refusal, type RenameBook, renameAt, renameStartAt } from '../features/rename.ts';
import { type Stretch, selectionsAt } from '../features/selection.ts';
import { type FoundSymbol, symbolsMatching } from '../features/workspace-symbols.ts';
import type { SourceFile } from '../syntax/tree.ts';
import type { Place } from '../text/span.ts';
import type { Steps } from '../text/steps.ts';
import type { Speaker } from '../words/speaker.ts';
import type { BlockAnswers } from './answer.ts';
import type { Files } from './files.ts';
import { NameIndex } from './name-index.ts';

/** Why a name is not renamed, in one sentence for the baker. */
export interface Refused {
  readonly refused: string;
}

/** What an editor asks about names and where they lead. Long work comes in steps. */
export interface Navigation {
  definition(uri: string, line: number, column: number): DefinitionAnswer | undefined;
  typeDefinition(uri: string, line: number, column: number): DefinitionAnswer | undefined;
  references(
    uri: string,
    line: number,
    column: number,
    withDefinitions: boolean,
  ): Steps<readonly Reference[]>;
  highlights(uri: string, line: number, column: number): readonly Highlight[];
  renameStart(
    uri: string,
    line: number,
    column: number,
  ): { readonly place: Place; readonly text: string } | Refused | undefined;
  rename(uri: string, line: number, column: number, name: string): Steps<readonly FileEdit[] | Refused>;
  symbolsMatching(query: string): Steps<readonly FoundSymbol[]>;
  goesItem(uri: string, line: number, column: number): GoesItem | undefined;
  users(uri: string, line: number, column: number): Steps<readonly GoesLink[]>;
  goesInto(uri: string, line: number, column: number): readonly GoesLink[];
  lenses(uri: string): readonly Lens[];
  /** Who uses what the header at a place defines. */
  uses(uri: string, line: number, column: number): Steps<Uses | undefined>;
  /**
   * Reads a file and gathers its names, which any later question would do for all files at once: so a large workspace
   * becomes known a file at a time.
   */
  index(uri: string): void;
  ruleLinks(uri: string): readonly RuleLink[];
  selections(uri: string, line: number, column: number): readonly Stretch[];
}

/** `read` gives the file as it stands, with all that is to be read before an answer read; `speaker` whoever words it now. */
export function createNavigation(
  files: Files,
  answers: BlockAnswers,
  read: (uri: string) => { readonly source: SourceFile } | undefined,
  speaker: () => Speaker,
): Navigation {
  const index = new NameIndex(files);
  const book: RenameBook = {
    source: (uri) => {
      const file = files.get(uri);
      return file === undefined ? undefined : files.read(file);
    },
    scopeOf: (uri) => files.scopeOf(uri),
    scopeIf: (uri, definition, name) => files.scopeIf(uri, definition, name),
    mentioning: (folded) => index.mentioning(folded),
    names: () => index.names(),
    fileName: (uri) => decoded(uri.slice(uri.lastIndexOf('/') + 1)),
  };
  const asking = <A extends readonly unknown[], R>(empty: R, answer: (uri: string, ...rest: A) => R) => {
    return (uri: string, ...rest: A): R => (read(uri) === undefined ? empty : answer(uri, ...rest));
  };
  return {
    definition: asking(undefined, (uri, line: number, column: number) =>
      definitionAt(book, uri, line, column),
    ),
    typeDefinition: asking(undefined, (uri, line: number, column: number) =>
      typeDefinitionAt(book, uri, line, column),
    ),
    *references(uri, line, column, withDefinitions) {
      if (read(uri) === undefined) return [];
      return yield* referencesAt(book, uri, line, column, withDefinitions);
    },
    highlights: asking([], (uri, line: number, column: number) => highlightsAt(book, uri, line, column)),
    renameStart: asking(undefined, (uri, line: number, column: number) =>
      inWords(renameStartAt(book, uri, line, column), speaker()),
    ),
    *rename(uri, line, column, name) {
      if (read(uri) === undefined) return [];
      return inWords(yield* renameAt(book, uri, line, column, name), speaker());
    },
    *symbolsMatching(query) {
      files.readAll();
      return yield* symbolsMatching(files.definitions(), query);
    },
    goesItem: asking(undefined, (uri, line: number, column: number) =>
      goesItemAt(book, uri, line, column, speaker()),
    ),
    *users(uri, line, column) {
      if (read(uri) === undefined) return [];
      return yield* usersOf(book, uri, line, column, speaker());
    },
    goesInto: asking([], (uri, line: number, column: number) =>
      goesIntoAt(book, uri, line, column, speaker()),
    ),
    lenses: (uri) => {
      const source = read(uri)?.source;
      return source === undefined
        ? []
        : lensesOf(book, uri, source, (block) => answers.analysisOf(uri, block), speaker());
    },
    *uses(uri, line, column) {
      if (read(uri) === undefined) return undefined;
      return yield* usesAt(book, uri, line, column, speaker());
    },
    index: (uri) => index.look(uri),
    ruleLinks: (uri) => {
      const source = read(uri)?.source;
      return source === undefined ? [] : ruleLinksOf(source);
    },
    selections: (uri, line, column) => {
      const source = read(uri)?.source;
      return source === undefined ? [] : selectionsAt(source, line, column);
    },
  };
}

function inWords<T extends object | undefined>(
  answer: T | Refusal,
  speaker: Speaker,
): Exclude<T, Refusal> | Refused {
  return answer !== undefined && 'refused' in answer
    ? { refused: speaker.say((answer as Refusal).refused) }
    : (answer as Exclude<T, Refusal>);
}

function decoded(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}
