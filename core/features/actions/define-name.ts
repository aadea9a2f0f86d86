import { findMixer } from '../../model/found-mixer.ts';
import type { DefinitionKind } from '../../model/scope.ts';
import type { Name } from '../../syntax/tree.ts';
import { elementAt } from '../../text/element.ts';
import { shortName } from '../../text/short-name.ts';
import { message } from '../../words/message.ts';
import type { Action, ActionContext } from './action.ts';
import { touchedFindings } from './action-places.ts';
import { LineChanges } from './line-changes.ts';

/** How each kind of definition begins; the words that a baker types over stand first. */
const forms = [
  { word: 'flour', kind: 'ingredient', lines: ['  grain wheat', '  milling white', '  protein 12%'] },
  { word: 'ingredient', kind: 'ingredient', lines: ['  water 0%'] },
  { word: 'mixer', kind: 'mixer', lines: ['  kind spiral'] },
] as const;

export const defineName: Action = {
  id: 'define-name',
  kind: 'fix',
  name: 'Define an unknown flour, ingredient or mixer',
  explanation:
    'Starts the section of a name that is not defined: at the end of the nearest other file that defines things of its kind ' +
    '(so that the other formulas see it too), and a flour at the end of this file; ingredients and mixers of this file are among ' +
    'the fixes of the finding itself. What it writes is a beginning to be made true.',
  example: 'formula Quay Tin:\n  ‸Pier Mill white    100%\n  water              65%\n',
  variants: true,
  *offers(context) {
    for (const finding of touchedFindings(context)) {
      const kind = finding.code === 'unknown-ingredient' ? 'ingredient' : 'mixer';
      if (finding.code !== 'unknown-ingredient' && finding.code !== 'unknown-mixer') continue;
      const name = nameAt(context, finding.place.line - context.firstLine, finding.place.start);
      if (name === undefined || (kind === 'mixer' && findMixer(name, context.scope).kind !== 'unknown'))
        continue;
      const elsewhere = nearestFile(context, kind);
      for (const form of forms) {
        if (form.kind !== kind) continue;
        const places = form.word === 'flour' ? [context.uri, elsewhere] : [elsewhere];
        for (const uri of places) {
          if (uri === undefined) continue;
          yield {
            title:
              uri === context.uri
                ? message('define-name.flour-here', { name: shortName(name.text) })
                : message(`define-name.${form.word}`, {
                    name: shortName(name.text),
                    file: shortName(fileName(uri), 16),
                  }),
            argument: `${form.word} ${uri === context.uri ? 'here' : 'there'}`,
            findings: [finding],
            edits: () => define(context, uri, [`${form.word} ${name.text}:`, ...form.lines]),
          };
        }
      }
    }
  },
};

function nameAt({ block }: ActionContext, line: number, start: number): Name | undefined {
  const statement = block.lines[line]?.statement;
  switch (statement?.kind) {
    case 'ingredient':
      return statement.name.start === start ? statement.name : undefined;
    case 'header':
      return statement.mixer?.start === start ? statement.mixer : undefined;
    case 'property':
      return statement.value?.form === 'name' ? statement.value.name : undefined;
    default:
      return undefined;
  }
}

/** The file, other than this one, of the nearest definition of a kind. */
function nearestFile({ scope, uri }: ActionContext, kind: DefinitionKind): string | undefined {
  return scope.names(kind).find((one) => one.uri !== uri)?.uri;
}

function define(context: ActionContext, uri: string, lines: readonly string[]) {
  const source = uri === context.uri ? context.source : context.fileOf(uri);
  if (source === undefined) return undefined;
  let last = source.lines.length - 1;
  while (last > 0 && elementAt(source.lines, last).text.trim() === '') last--;
  return new LineChanges({ uri, source, firstLine: 0 }).addBelow(last, '', ...lines).edits();
}

function fileName(uri: string): string {
  return decodeURIComponent(uri.slice(uri.lastIndexOf('/') + 1));
}
