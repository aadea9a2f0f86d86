import { commands, type Disposable, Location, Position, Range, Uri } from 'vscode';

/** The command that a lens over a definition calls; it is called by lenses only and stands in no menu. */
export const showUsesCommand = 'doughwright.showUses';

interface PlainPosition {
  readonly line: number;
  readonly character: number;
}

interface PlainLocation {
  readonly uri: string;
  readonly range: { readonly start: PlainPosition; readonly end: PlainPosition };
}

/** Shows the uses that the server found, as plain data, in the editor’s own list of references. */
export function registerShowUses(): Disposable {
  return commands.registerCommand(
    showUsesCommand,
    (uri: string, at: PlainPosition, locations: readonly PlainLocation[]) =>
      commands.executeCommand(
        'editor.action.showReferences',
        Uri.parse(uri, true),
        positionOf(at),
        locations.map(
          (one) =>
            new Location(
              Uri.parse(one.uri, true),
              new Range(positionOf(one.range.start), positionOf(one.range.end)),
            ),
        ),
      ),
  );
}

function positionOf({ line, character }: PlainPosition): Position {
  return new Position(line, character);
}
