import type { Provenance } from '../calc/known.ts';
import { type Message, message } from '../words/message.ts';

/** Where a figure comes from: stated, measured, published or common practice. */
export function provenanceMessage(provenance: Provenance): Message {
  return provenance === 'common practice'
    ? message('provenance.common-practice')
    : message(`provenance.${provenance}`);
}
