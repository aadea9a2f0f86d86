/** How a command went, as the shell is told: nothing to report, something to report, could not run. */
export type ExitCode = 0 | 1 | 2;

/** Takes what a command ends with. */
export type End = (code: ExitCode) => void;
