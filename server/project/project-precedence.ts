import type { ServerSettings } from '../sync/settings.ts';
import type { ProjectSettings } from './project-settings.ts';

/**
 * The settings of an editor in a project. What is found hangs on levels and usual temperatures, and shall be the same for all:
 * there the project goes first. How it is shown is the reader's: there the project holds where the editor has nothing set.
 */
export function inProject(settings: ServerSettings, project: ProjectSettings): ServerSettings {
  const { core, display, language } = settings;
  return {
    ...settings,
    core: {
      ...core,
      rules: { ...core.rules, ...project.rules },
      usual: { ...core.usual, ...project.usual },
    },
    display: {
      mass: display.mass === 'grams' ? (project.mass ?? 'grams') : display.mass,
      temperature:
        display.temperature === 'celsius' ? (project.temperature ?? 'celsius') : display.temperature,
      decimalSign:
        display.decimalSign === 'language' ? (project.decimalSign ?? 'language') : display.decimalSign,
    },
    language: language === 'editor' ? (project.language ?? 'editor') : language,
  };
}
