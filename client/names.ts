/** Names that the manifest and the code share; a test holds the two together. */
export const languageId = 'doughwright';
export const sheetViewType = 'doughwright.sheet';
export const commandIds = {
  restart: 'doughwright.restart',
  openSheet: 'doughwright.openSheet',
  showLog: 'doughwright.showLog',
} as const;
