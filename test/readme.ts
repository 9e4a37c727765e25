// Reads the README's samples: what is computed, what the text says it gives, and what the command line answers.

export interface Sample {
  readonly kind: string;
  readonly text: string;
}

/** The fenced samples of a Markdown text in order. */
export function samplesOf(markdown: string): readonly Sample[] {
  return [...markdown.matchAll(/^```(\w+)\n([\s\S]*?)^```$/gm)].map(([, kind, text]) => ({ kind: kind ?? "", text: text ?? "" }));
}

export interface Claim {
  readonly name: string;
  readonly shown: string;
}

/** Lines of a sample of results: `name = value`, or `title HOLDS` and `title FAILS`. */
export function claimsOf(text: string): readonly Claim[] {
  return text
    .trimEnd()
    .split("\n")
    .map((line) => {
      const [, value, shown, title, state] = /^(?:(\w+) = (.+)|(.+) (HOLDS|FAILS))$/.exec(line) ?? [];
      return { name: value ?? title ?? line, shown: shown ?? state ?? "(not understood)" };
    });
}

export interface Call {
  readonly args: readonly string[];
  readonly answer: string;
}

/** Lines `$ npm run -s jointwright -- ...` with the answer below each. */
export function callsOf(text: string): readonly Call[] {
  return text
    .split(/^\$ npm run -s jointwright -- /m)
    .slice(1)
    .map((part) => {
      const [line = "", ...answer] = part.trimEnd().split("\n");
      const args = [...line.matchAll(/'([^']*)'|(\S+)/g)].map(([, quoted, bare]) => quoted ?? bare ?? "");
      return { args, answer: answer.join("\n") };
    });
}
