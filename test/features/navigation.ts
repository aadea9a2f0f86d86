import {
  type Destination,
  finish,
  type GoesItem,
  type GoesLink,
  type Place,
  type Stretch,
} from '../../core/index.ts';
import { type Asked, rootUri } from './archive.ts';

/** The answer to a question about names, in lines of a fixture; `undefined` when the words ask for none. */
export function navigationAnswer(words: string, asked: Asked): string[] | undefined {
  const { service, uri, line, column } = asked;
  const [, first, rest = ''] = /^(\S+)\s*(.*)$/.exec(words) ?? [];
  switch (first) {
    case 'definition':
      return service.definition(uri, line, column)?.destinations.map(tellDestination) ?? ['no name'];
    case 'type-definition':
      return service.typeDefinition(uri, line, column)?.destinations.map(tellDestination) ?? ['no name'];
    case 'references':
      return finish(service.references(uri, line, column, rest === 'with definitions')).map(
        ({ uri: of, place }) => `${fileOf(of)} ${tellPlace(place)}`,
      );
    case 'highlights':
      return service
        .highlights(uri, line, column)
        .map(({ place, writes }) => `${tellPlace(place)} ${writes ? 'write' : 'read'}`);
    case 'rename-start': {
      const start = service.renameStart(uri, line, column);
      if (start === undefined) return ['no name'];
      return ['refused' in start ? start.refused : `${tellPlace(start.place)} ${start.text}`];
    }
    case 'rename':
      return tellRename(asked, rest);
    case 'workspace-symbols':
      return finish(service.symbolsMatching(rest)).map(
        ({ name, kind, container, uri: of, place }) =>
          `${kind} ${name}${container === undefined ? '' : ` (${container})`} ${fileOf(of)} ${tellPlace(place)}`,
      );
    case 'item': {
      const item = service.goesItem(uri, line, column);
      return item === undefined ? [] : [tellItem(item)];
    }
    case 'users':
      return finish(service.users(uri, line, column)).map(tellLink);
    case 'goes-into':
      return service.goesInto(uri, line, column).map(tellLink);
    case 'lenses':
      return service.lenses(uri).map((lens) => {
        if (lens.kind === 'totals') return `${lens.place.line} ${lens.text}`;
        const uses = finish(service.uses(uri, lens.place.line, lens.place.start));
        return `${lens.place.line} ${uses?.text}: ${uses?.references.length} places`;
      });
    case 'rule-links':
      return service.ruleLinks(uri).map(({ place, code }) => `${tellPlace(place)} ${code}`);
    case 'selections':
      return service.selections(uri, line, column).map(tellStretch);
    default:
      return undefined;
  }
}

function fileOf(uri: string): string {
  return decodeURIComponent(uri.slice(rootUri.length));
}

function tellPlace({ line, start, end }: Place): string {
  return `${line}:${start}–${end}`;
}

function tellDestination({ uri, name, firstLine, lastLine, lastColumn }: Destination): string {
  return `${fileOf(uri)} [${tellPlace(name)}] ${firstLine}–${lastLine}:${lastColumn}`;
}

function tellItem(item: GoesItem): string {
  return `${item.kind} ${item.label} (${item.detail}) ${tellDestination(item)}`;
}

function tellLink({ item, places }: GoesLink): string {
  return `${tellItem(item)} at ${places.map(tellPlace).join(', ')}`;
}

function tellStretch({ firstLine, start, lastLine, end }: Stretch): string {
  return `${firstLine}:${start}–${lastLine}:${end}`;
}

/** The changed lines of every file, as they read after the rename. */
function tellRename({ service, uri, line, column, texts }: Asked, name: string): string[] {
  const answer = finish(service.rename(uri, line, column, name));
  if ('refused' in answer) return [answer.refused];
  return answer.flatMap(({ uri: of, edits }) => {
    const lines = texts.get(of)!.split(/\r\n|\r|\n/);
    for (const { line: row, start, end, insert } of edits.toReversed())
      lines[row] = lines[row]!.slice(0, start) + insert + lines[row]!.slice(end);
    return [...new Set(edits.map((edit) => edit.line))].map((row) => `${fileOf(of)} ${row}|${lines[row]}`);
  });
}
