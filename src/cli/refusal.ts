/** Exit codes of every command. */
export const EXIT = {
  done: 0,
  /** Planned nothing, or found that a plan does not hold; what stands in the way is listed. */
  blocked: 1,
  /** Not called as the usage says, or called on something that is not there. */
  wrongCall: 2,
} as const;

export type ExitCode = (typeof EXIT)[keyof typeof EXIT];

/** Ends a command with words for the user and an exit code. */
export class Refusal extends Error {
  readonly exitCode: ExitCode;

  constructor(message: string, exitCode: ExitCode = EXIT.wrongCall) {
    super(message);
    this.exitCode = exitCode;
  }
}
