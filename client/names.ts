/** Names that the manifest and the code share; a test holds the two together. */
export const languageId = 'doughwright';
export const sheetViewType = 'doughwright.sheet';
export const changesViewType = 'doughwright.changes';
export const historyViewType = 'doughwright.history';
export const planViewType = 'doughwright.plan';
export const experimentViewType = 'doughwright.experiment';
export const overlayViewType = 'doughwright.overlay';
export const listViewId = 'doughwright.list';
/** Context key: the list in the side bar shows only what fits the words typed. */
export const filteringContext = 'doughwright.listIsFiltered';
/** Context keys: a folder is open; a formula file has been in front. */
export const hasFolderContext = 'doughwright.hasFolder';
export const hasFormulaContext = 'doughwright.hasFormula';
/** The type of our tasks, and the name of what finds the problems in their output. */
export const taskType = 'doughwright';
export const commandIds = {
  restart: 'doughwright.restart',
  openSheet: 'doughwright.openSheet',
  openPinnedSheet: 'doughwright.openPinnedSheet',
  workFromSheet: 'doughwright.workFromSheet',
  saveSheet: 'doughwright.saveSheet',
  printSheet: 'doughwright.printSheet',
  copySheet: 'doughwright.copySheet',
  showChanges: 'doughwright.showChanges',
  showHistory: 'doughwright.showHistory',
  showLog: 'doughwright.showLog',
  newFormula: 'doughwright.newFormula',
  importClipboard: 'doughwright.importClipboard',
  importSelection: 'doughwright.importSelection',
  filterList: 'doughwright.filterList',
  clearListFilter: 'doughwright.clearListFilter',
  refreshList: 'doughwright.refreshList',
  convertMixing: 'doughwright.convertMixing',
  openPlan: 'doughwright.openPlan',
  openExperiment: 'doughwright.openExperiment',
  runExperiment: 'doughwright.runExperiment',
  layOver: 'doughwright.layOver',
  openMap: 'doughwright.openMap',
  openGuide: 'doughwright.openGuide',
  openDemo: 'doughwright.openDemo',
  revealEntry: 'doughwright.revealEntry',
  renameEntry: 'doughwright.renameEntry',
  duplicateEntry: 'doughwright.duplicateEntry',
  deleteEntry: 'doughwright.deleteEntry',
} as const;
