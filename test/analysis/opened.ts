import { createService, type Service } from '../../core/index.ts';

/** A service over one text of the Quay Lane bakery. */
export function openedAt(uri: string, text: string): Service {
  const service = createService();
  service.setRoots(['file:///quay-lane/']);
  service.setText(uri, text);
  return service;
}
