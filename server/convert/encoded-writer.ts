import type { Message, MessageWriter } from 'vscode-languageserver';
import type { PositionEncoding } from './convert-encoding.ts';

/** A writer that tells positions as the client counts them. */
export function encodedWriter(writer: MessageWriter, encoding: PositionEncoding): MessageWriter {
  return {
    onError: writer.onError,
    onClose: writer.onClose,
    write: (message: Message) => writer.write(encoding.outgoing(message)),
    end: () => writer.end(),
    dispose: () => writer.dispose(),
  };
}
