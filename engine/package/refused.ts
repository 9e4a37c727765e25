// A package that is not made: every reason at once.

/** What would not fit or cannot be shown; nothing is made then. */
export class PackageRefused extends Error {
  readonly problems: readonly string[];
  constructor(problems: readonly string[]) {
    super(problems.join("\n"));
    this.problems = problems;
  }
}
