import {
  createServerPipeTransport,
  createServerSocketTransport,
  IPCMessageReader,
  IPCMessageWriter,
  type MessageReader,
  type MessageWriter,
} from 'vscode-languageserver/node';
import { WholeMessageWriter } from './whole-message-writer.ts';

/**
 * The channel that the arguments of a process name: `--stdio`, `--node-ipc`, `--socket=PORT` or `--pipe=NAME`; `undefined`
 * when they name none. Standard input is left a stream, so that the connection sees it close.
 */
export function transportOf(
  args: readonly string[],
): readonly [NodeJS.ReadableStream | MessageReader, MessageWriter] | undefined {
  for (const [index, arg] of args.entries()) {
    const [name, value = args[index + 1] ?? ''] = arg.split('=', 2) as [string, string?];
    if (name === '--stdio') return [process.stdin, new WholeMessageWriter(process.stdout)];
    if (name === '--node-ipc') return [new IPCMessageReader(process), new IPCMessageWriter(process)];
    if (name === '--socket' && Number(value) > 0) return createServerSocketTransport(Number(value));
    if (name === '--pipe' && value !== '') return createServerPipeTransport(value);
  }
  return undefined;
}
