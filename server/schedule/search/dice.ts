// Chance that is the same everywhere for the same seed: a 32-bit generator (Marsaglia's xorshift of 2003, period 2^32 - 1).

export interface Dice {
  state: number;
}

export function diceOf(seed: number): Dice {
  // Neighbouring seeds are spread apart first (the finalizer of MurmurHash3).
  let mixed = seed | 0;
  mixed = Math.imul(mixed ^ (mixed >>> 16), 0x85ebca6b);
  mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35);
  mixed ^= mixed >>> 16;
  return { state: mixed === 0 ? 0x9e3779b9 | 0 : mixed };
}

/** From 0 up to, but without, 1. */
export function roll(dice: Dice): number {
  let { state } = dice;
  state ^= state << 13;
  state ^= state >>> 17;
  state ^= state << 5;
  dice.state = state;
  return (state >>> 0) / 4294967296;
}

/** A whole number from 0 up to, but without, `sides`. */
export function pick(dice: Dice, sides: number): number {
  return Math.floor(roll(dice) * sides);
}
