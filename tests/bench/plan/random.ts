// Seeded numbers for made-up plans: the same on every machine.

export interface Random {
  /** A whole number from 0 up to, not including, the limit. */
  readonly below: (limit: number) => number;
  readonly pick: <T>(choices: readonly [T, ...T[]]) => T;
}

/** The generator known as mulberry32: 32 bits of state, whole-number arithmetic only. */
export function seeded(seed: number): Random {
  let state = seed | 0;
  const next = () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
  const below = (limit: number) => Math.floor(next() * limit);
  return { below, pick: (choices) => choices[below(choices.length)]! };
}
