import { type Lens, lensesOf, type Uses, usesAt } from '../features/hover/lenses.ts';
import {
  type GoesItem,
  type GoesLink,
  goesIntoAt,
  goesItemAt,
  usersOf,
} from '../features/names/call-hierarchy.ts';
import { type DefinitionAnswer, definitionAt, typeDefinitionAt } from '../features/names/definitions.ts';
import { type RuleLink, ruleLinksOf } from '../features/names/links.ts';
import { type Highlight, highlightsAt, type Reference, referencesAt } from '../features/names/references.ts';
import { type RenameBook, renameAt, renameStartAt } from '../features/names/rename.ts';
import { type FoundSymbol, symbolsMatching } from '../features/names/workspace-symbols.ts';
import { type Stretch, selectionsAt } from '../features/outline/selection.ts';
import type { FileEdit } from '../text/edits.ts';
import type { Place } from '../text/span.ts';
import type { Steps } from '../text/steps.ts';
import { type Refused, saidAnswer } from '../words/refusal.ts';
import type { Speaker } from '../words/speaker.ts';
import type { View } from './snapshot-view.ts';

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

/**
 * `view` gives the snapshot that a question is about, and `speaker` whoever words its answer; `look` gathers the names of one
 * file ahead of questions.
 */
export function createNavigation(
  view: () => View,
  look: (uri: string) => void,
  speaker: () => Speaker,
): Navigation {
  /** The book of the present snapshot, where it has the file. */
  const bookOf = (uri: string): RenameBook | undefined => {
    const asked = view();
    return asked.read(uri) === undefined ? undefined : bookAt(asked);
  };
  const asking = <A extends readonly unknown[], R>(
    empty: R,
    answer: (book: RenameBook, uri: string, ...rest: A) => R,
  ) => {
    return (uri: string, ...rest: A): R => {
      const book = bookOf(uri);
      return book === undefined ? empty : answer(book, uri, ...rest);
    };
  };
  return {
    definition: asking(undefined, (book, uri, line: number, column: number) =>
      definitionAt(book, uri, line, column),
    ),
    typeDefinition: asking(undefined, (book, uri, line: number, column: number) =>
      typeDefinitionAt(book, uri, line, column),
    ),
    *references(uri, line, column, withDefinitions) {
      const book = bookOf(uri);
      return book === undefined ? [] : yield* referencesAt(book, uri, line, column, withDefinitions);
    },
    highlights: asking([], (book, uri, line: number, column: number) =>
      highlightsAt(book, uri, line, column),
    ),
    renameStart: asking(undefined, (book, uri, line: number, column: number) => {
      const start = renameStartAt(book, uri, line, column);
      return start === undefined ? undefined : saidAnswer(start, speaker());
    }),
    *rename(uri, line, column, name) {
      const [book, wording] = [bookOf(uri), speaker()];
      return book === undefined ? [] : saidAnswer(yield* renameAt(book, uri, line, column, name), wording);
    },
    symbolsMatching: (query) => symbolsMatching(view().definitions(), query),
    goesItem: asking(undefined, (book, uri, line: number, column: number) =>
      goesItemAt(book, uri, line, column, speaker()),
    ),
    *users(uri, line, column) {
      const book = bookOf(uri);
      return book === undefined ? [] : yield* usersOf(book, uri, line, column, speaker());
    },
    goesInto: asking([], (book, uri, line: number, column: number) =>
      goesIntoAt(book, uri, line, column, speaker()),
    ),
    lenses: (uri) => {
      const asked = view();
      const source = asked.read(uri)?.source;
      return source === undefined
        ? []
        : lensesOf(
            bookAt(asked),
            uri,
            source,
            {
              analysisOf: (block) => asked.analysisOf(uri, block),
              planOf: (block) => asked.planOf(uri, block),
            },
            speaker(),
          );
    },
    *uses(uri, line, column) {
      const book = bookOf(uri);
      return book === undefined ? undefined : yield* usesAt(book, uri, line, column, speaker());
    },
    index: look,
    ruleLinks: (uri) => {
      const asked = view();
      const source = asked.read(uri)?.source;
      return source === undefined ? [] : ruleLinksOf(source, asked.snapshot.settings.language);
    },
    selections: (uri, line, column) => {
      const source = view().read(uri)?.source;
      return source === undefined ? [] : selectionsAt(source, line, column);
    },
  };
}

function bookAt(view: View): RenameBook {
  return {
    source: (uri) => view.read(uri)?.source,
    scopeOf: (uri) => view.scopeOf(uri),
    scopeIf: (uri, definition, name) => view.scopeIf(uri, definition, name),
    mentioning: (folded) => view.mentioning(folded),
    names: () => view.names(),
    fileName: (uri) => decoded(uri.slice(uri.lastIndexOf('/') + 1)),
  };
}

function decoded(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}
