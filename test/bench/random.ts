// A seeded source of chance for made texts: the same seed gives the same texts on every machine.

export interface Chance {
  /** A whole number from 0 up to, not with, `count`. */
  readonly below: (count: number) => number;
  readonly from: <T>(choices: readonly T[]) => T;
  /** True once in `count` times. */
  readonly oneIn: (count: number) => boolean;
}

/** Marsaglia's xorshift of 32 bits ("Xorshift RNGs", 2003); two numbers name a stream, so that each text stands by itself. */
export function chance(seed: number, stream = 0): Chance {
  // The multipliers are those of MurmurHash3's last step; neighbouring streams would else begin alike.
  let state = (Math.imul(seed ^ 0x9e3779b9, 0x85ebca6b) ^ Math.imul(stream + 1, 0xc2b2ae35)) >>> 0 || 1;
  const next = (): number => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    state >>>= 0;
    return state;
  };
  for (let i = 0; i < 8; i += 1) next();
  const below = (count: number): number => Math.floor((next() / 0x1_0000_0000) * count);
  return {
    below,
    from: (choices) => choices[below(choices.length)] as (typeof choices)[number],
    oneIn: (count) => below(count) === 0,
  };
}
