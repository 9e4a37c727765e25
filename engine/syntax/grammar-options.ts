// Makers of chevrotain's option objects. A function that is an argument carries no name of its own; some loaders name every
// function that is a property each time it is made, which costs more than the parse.

import type { TokenType } from "chevrotain";

interface Alternative<T> {
  readonly ALT: () => T;
}

export const alt = <T>(ALT: () => T): Alternative<T> => ({ ALT });
export const gated = <T>(GATE: () => boolean, ALT: () => T): Alternative<T> & { readonly GATE: () => boolean } => ({ GATE, ALT });
export const gatedOption = <T>(GATE: () => boolean, DEF: () => T): { readonly GATE: () => boolean; readonly DEF: () => T } => ({
  GATE,
  DEF,
});
export const separated = <T>(SEP: TokenType, DEF: () => T): { readonly SEP: TokenType; readonly DEF: () => T } => ({ SEP, DEF });
