// Numbers as if thrown by dice, but from a seed: each is told by the seed, the run and the thing that it is for, so it does
// not depend on what else is drawn. A plan with one step more draws the same lengths for all the others.

/** Between 0 and 1, neither of them. Whole numbers in; the mixing is that of MurmurHash3 (Austin Appleby, public domain). */
export function drawOf(seed: number, run: number, thing: number): number {
  let mixed = stirred(stirred(stirred(0, seed), run), thing);
  mixed = Math.imul(mixed ^ (mixed >>> 16), 0x85ebca6b);
  mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35);
  return (((mixed ^ (mixed >>> 16)) >>> 0) + 0.5) / 4_294_967_296;
}

function stirred(mixed: number, word: number): number {
  const folded = Math.imul(word, 0xcc9e2d51);
  const turned = mixed ^ Math.imul((folded << 15) | (folded >>> 17), 0x1b873593);
  return (Math.imul((turned << 13) | (turned >>> 19), 5) + 0xe6546b64) | 0;
}

/** A whole number for a name: 32 bits of FNV-1a (Fowler, Noll and Vo). */
export function thingOf(name: string): number {
  let hash = 0x811c9dc5;
  for (let at = 0; at < name.length; at++) hash = Math.imul(hash ^ name.charCodeAt(at), 0x01000193);
  return hash;
}
