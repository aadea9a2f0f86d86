import { AbstractMessageWriter, type Message, type MessageWriter } from 'vscode-languageserver';

/**
 * Writes each message in one piece, as it is given. The writer of the library writes its head and its body apart, each behind some
 * promises: a tenth of the time of a keystroke.
 */
export class WholeMessageWriter extends AbstractMessageWriter implements MessageWriter {
  readonly #stream: NodeJS.WritableStream;
  #errors = 0;

  constructor(stream: NodeJS.WritableStream) {
    super();
    this.#stream = stream;
    stream.on('error', (error) => this.fireError(error));
    stream.on('close', () => this.fireClose());
  }

  write(message: Message): Promise<void> {
    return new Promise((resolve, reject) => {
      const body = JSON.stringify(message);
      const whole = `Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`;
      this.#stream.write(whole, (error) => {
        if (!error) return resolve();
        this.fireError(error, message, ++this.#errors);
        reject(error);
      });
    });
  }

  end(): void {
    this.#stream.end();
  }
}
