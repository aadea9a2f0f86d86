import type { Level, UsualConditions } from '../../core/index.ts';
import type { SettingValues } from '../sync/settings-table.ts';

/** What the file is called that holds for all who work on the formulas beside and below it. */
export const projectFileName = 'doughwright.json';

/** What a project has decided for its formulas; what it leaves open is absent. */
export interface ProjectSettings {
  readonly rules: Readonly<Record<string, Level | 'off'>>;
  readonly usual: UsualConditions;
  readonly language?: Exclude<SettingValues['language'], 'editor'>;
  readonly mass?: SettingValues['units.mass'];
  readonly temperature?: SettingValues['units.temperature'];
  readonly decimalSign?: SettingValues['decimalSign'];
}

export const noProject: ProjectSettings = { rules: {}, usual: {} };
