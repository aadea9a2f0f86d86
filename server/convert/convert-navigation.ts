import {
  type CallHierarchyItem,
  type CodeLens,
  type DocumentHighlight,
  DocumentHighlightKind,
  type DocumentLink,
  type Location,
  type LocationLink,
  type Range,
  type SelectionRange,
  type SymbolInformation,
} from 'vscode-languageserver';
import type * as core from '../../core/index.ts';
import { type Naming, symbolKinds, toRange } from './convert.ts';

/** Where names lead, and who uses what, as the protocol says it. */

export function toLocation({ uri, place }: core.Reference, naming: Naming): Location {
  return { uri: naming.spell(uri), range: toRange(place) };
}

/** The destinations of a name; with the name they are asked from, for a client that underlines it. */
export function toDestinations(
  { origin, destinations }: core.DefinitionAnswer,
  links: boolean,
  naming: Naming,
): Location[] | LocationLink[] {
  if (!links) return destinations.map(({ uri, name }) => toLocation({ uri, place: name }, naming));
  return destinations.map((destination) => ({
    originSelectionRange: toRange(origin),
    targetUri: naming.spell(destination.uri),
    targetRange: wholeOf(destination),
    targetSelectionRange: toRange(destination.name),
  }));
}

export function toHighlight({ place, writes }: core.Highlight): DocumentHighlight {
  return { range: toRange(place), kind: writes ? DocumentHighlightKind.Write : DocumentHighlightKind.Read };
}

export function toSymbolInformation(found: core.FoundSymbol, naming: Naming): SymbolInformation {
  const { name, kind, container, uri, place } = found;
  return {
    name,
    kind: symbolKinds[kind],
    location: toLocation({ uri, place }, naming),
    ...(container !== undefined && { containerName: container }),
  };
}

export function toCallItem(item: core.GoesItem, naming: Naming): CallHierarchyItem {
  return {
    name: item.label,
    kind: symbolKinds[item.kind],
    detail: item.detail,
    uri: naming.spell(item.uri),
    range: wholeOf(item),
    selectionRange: toRange(item.name),
  };
}

export function toDocumentLink({ place, code, title }: core.RuleLink, rulePages: string): DocumentLink {
  return { range: toRange(place), target: `${rulePages}${code}.md`, tooltip: title };
}

/** What a lens does when it is chosen, for a client that has these commands; else it is only read. */
export interface LensCommands {
  readonly openSheet: boolean;
  readonly openExperiment: boolean;
  readonly openPlan: boolean;
  /** Called from a hover. */
  readonly openMap: boolean;
  readonly showUses: boolean;
}

export const openMapCommand = 'doughwright.openMap';

/** The Markdown of a hover, with a link to the map of the gap where the client has that command. */
export function withMapLink(
  { markdown, mapLink, place }: core.HoverAnswer,
  uri: string,
  opensMap: boolean,
): string {
  if (mapLink === undefined || !opensMap) return markdown;
  // A parenthesis in a name would end the link.
  const chosen = encodeURIComponent(JSON.stringify([{ uri, line: place.line }]))
    .replaceAll('(', '%28')
    .replaceAll(')', '%29');
  return `${markdown}\n\n[${mapLink}](command:${openMapCommand}?${chosen})`;
}

export const openSheetCommand = 'doughwright.openSheet';
export const openExperimentCommand = 'doughwright.openExperiment';
export const openPlanCommand = 'doughwright.openPlan';
export const showUsesCommand = 'doughwright.showUses';

export function toCodeLens(lens: core.Lens, uri: string, commands: LensCommands, naming: Naming): CodeLens {
  const range = toRange(lens.place);
  if (lens.kind === 'uses') return { range, data: { uri: naming.spell(uri) } };
  const opens = {
    totals: commands.openSheet ? openSheetCommand : '',
    plan: commands.openPlan ? openPlanCommand : '',
    experiment: commands.openExperiment ? openExperimentCommand : '',
  };
  const command = opens[lens.kind];
  const chosen = { uri: naming.spell(uri), line: lens.place.line };
  return { range, command: { title: lens.text, command, ...(command && { arguments: [chosen] }) } };
}

/** A lens with who uses the definition below it; `notUsed` is what it says where it is none. */
export function withUses(
  lens: CodeLens,
  uses: core.Uses | undefined,
  commands: LensCommands,
  naming: Naming,
  notUsed: string,
): CodeLens {
  const title = uses?.text ?? notUsed;
  if (uses === undefined || uses.references.length === 0 || !commands.showUses)
    return { ...lens, command: { title, command: '' } };
  const locations = uses.references.map((reference) => toLocation(reference, naming));
  const { uri } = lens.data as { uri: string };
  return {
    ...lens,
    command: { title, command: showUsesCommand, arguments: [uri, lens.range.start, locations] },
  };
}

/** Stretches from the least to the most as a chain of parents. */
export function toSelectionRange(
  stretches: readonly core.Stretch[],
  position: Range['start'],
): SelectionRange {
  let parent: SelectionRange | undefined;
  for (const { firstLine, start, lastLine, end } of stretches.toReversed()) {
    const range = { start: { line: firstLine, character: start }, end: { line: lastLine, character: end } };
    parent = parent === undefined ? { range } : { range, parent };
  }
  return parent ?? { range: { start: position, end: position } };
}

function wholeOf({ firstLine, lastLine, lastColumn, name }: core.Destination): Range {
  const end = lastLine > name.line ? lastColumn : Math.max(lastColumn, name.end);
  return { start: { line: firstLine, character: 0 }, end: { line: lastLine, character: end } };
}
