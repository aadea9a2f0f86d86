import type { SignatureHelp } from 'vscode-languageserver';
import type { SignatureAnswer } from '../../core/index.ts';
import type { Abilities } from '../convert/abilities.ts';
import type { About, QuestionParts } from './about.ts';

/** Answers which forms the line at the cursor may take. */
export function answerSignatures({ connection, able }: QuestionParts, about: About): void {
  connection.onSignatureHelp(
    about('Forms of a line', null, 'now', (service, uri, { position }) => {
      const answer = service.signatures(uri, position.line, position.character);
      return answer === undefined ? null : toSignatureHelp(answer, able);
    }),
  );
}

/** Labels are counted in UTF-16 units whatever the encoding of positions. */
function toSignatureHelp({ signatures, active }: SignatureAnswer, able: Abilities): SignatureHelp {
  return {
    activeSignature: active,
    activeParameter: signatures[active]!.active,
    signatures: signatures.map(({ label, documentation, parameters, active: parameter }) => ({
      label,
      ...(documentation !== undefined && { documentation }),
      parameters: parameters.map(({ start, end, documentation: words }) => ({
        label: able.signatureOffsets ? [start, end] : label.slice(start, end),
        ...(words !== undefined && { documentation: words }),
      })),
      ...(able.signatureActive && { activeParameter: parameter }),
    })),
  };
}
